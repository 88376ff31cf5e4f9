using System.Globalization;
using System.Text.Json;

namespace HeapText.Benchmarks.Hook;

/// <summary>One text of one of many farmers who each join, send their stock and build.</summary>
internal sealed record FarmerText(string Id, string From, byte[] Body)
{
    private static readonly string[] Season =
    [
        "JOIN 41", "yes", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung", "built", "2",
        "1",
    ];

    private static int _farmers;

    /// <summary>Texts of new farmers, one farmer after the other.</summary>
    public static IEnumerable<FarmerText> Endless(int side)
    {
        while (true)
        {
            var farmer = Interlocked.Increment(ref _farmers);
            var from = string.Create(CultureInfo.InvariantCulture, $"+999{farmer:D9}");
            foreach (var text in Season)
            {
                var id = string.Create(CultureInfo.InvariantCulture, $"{side}-{farmer}-{text.Length}");
                var body = JsonSerializer.SerializeToUtf8Bytes(new { id, from, to = "100", text });
                yield return new FarmerText(id, from, body);
            }
        }
    }
}
