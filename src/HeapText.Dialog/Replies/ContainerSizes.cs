namespace HeapText.Dialog.Replies;

/// <summary>Which measure a container of a stated size is.</summary>
internal static class ContainerSizes
{
    /// <summary>As the measures are defined: a sack holds 90 kg of grain and a small one 50 kg; a bucket 20 litres and
    /// a small one 10; a jerrycan 20 litres.</summary>
    private static readonly Dictionary<(string Container, decimal Size, string Unit), string> Known = new()
    {
        [("sack", 50, "kg")] = "small-sack",
        [("sack", 90, "kg")] = "sack",
        [("sack", 100, "kg")] = "sack",
        [("bucket", 10, "litre")] = "small-bucket",
        [("bucket", 20, "litre")] = "bucket",
        [("jerrycan", 20, "litre")] = "jerrycan",
    };

    /// <summary>True for a container that comes in sizes.</summary>
    public static bool Has(string container) => Known.Keys.Any(known => known.Container == container);

    /// <summary>The measure; null for a size that is none of the known.</summary>
    public static string? Of(string container, decimal size, string unit) =>
        Known.GetValueOrDefault((container, size, unit));
}
