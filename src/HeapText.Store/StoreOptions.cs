namespace HeapText.Store;

/// <summary>Where the records are kept. Section <c>Store</c> of the settings.</summary>
public sealed class StoreOptions
{
    /// <summary>Empty: embedded, in <see cref="DataDirectory"/>. Else a StackExchange.Redis connection string for
    /// Redis or Valkey: single, Sentinel or Cluster.</summary>
    public string Connection { get; set; } = "";

    /// <summary>Folder of the embedded store; made when missing.</summary>
    public string DataDirectory { get; set; } = "./data";

    /// <summary>32 bytes in base 64, from which the keys that hide telephone numbers are derived. Keep a copy apart
    /// from the backups: without it no number can be read again. Empty, embedded only: made at the first start and
    /// kept in
    /// <c>store.key</c> in <see cref="DataDirectory"/>.</summary>
    public string Secret { get; set; } = "";

    /// <summary>Refuse a server that may lose what it acknowledged. Off only for trials on a server that keeps
    /// nothing.
    /// </summary>
    public bool RequireDurableServer { get; set; } = true;
}
