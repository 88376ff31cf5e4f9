namespace HeapText.Dialog.Ports;

/// <summary>Where one farmer's record lives: a keyed hash of the number, never the number itself.</summary>
/// <param name="Hash">32 lower-case hexadecimal digits: the first 16 bytes of HMAC-SHA-256 of the number.</param>
public readonly record struct FarmerKey(string Hash)
{
    /// <summary>How many partitions the farmers are spread over. Fixed for ever: stored keys depend on it.</summary>
    public const int Partitions = 256;

    /// <summary>The partition, 0 to 255: the first byte of the hash.</summary>
    public int Partition => Convert.ToInt32(Hash[..2], 16);
}
