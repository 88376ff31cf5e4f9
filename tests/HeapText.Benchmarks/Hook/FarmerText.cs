using System.Globalization;
using System.Text.Json;

namespace HeapText.Benchmarks.Hook;

/// <summary>One text of one of many farmers who each join, send their stock and build.</summary>
internal sealed record FarmerText(string Id, string From, byte[] Body)
{
    /// <summary>What each farmer texts.</summary>
    public static readonly string[] Season =
    [
        "JOIN 41", "yes", "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung", "built", "2",
        "1",
    ];

    private static int _farmers;

    /// <summary>Which text of the season it is: the last part of its id.</summary>
    public int Step => int.Parse(Id[(Id.LastIndexOf('-') + 1)..], CultureInfo.InvariantCulture);

    /// <summary>Texts of new farmers, one farmer after the other.</summary>
    public static IEnumerable<FarmerText> Endless(int side)
    {
        while (true)
        {
            var farmer = Interlocked.Increment(ref _farmers);
            var from = string.Create(CultureInfo.InvariantCulture, $"+999{farmer:D9}");
            for (var step = 0; step < Season.Length; step++)
            {
                var id = string.Create(CultureInfo.InvariantCulture, $"{side}-{farmer}-{step}");
                var body = JsonSerializer.SerializeToUtf8Bytes(new { id, from, to = "100", text = Season[step] });
                yield return new FarmerText(id, from, body);
            }
        }
    }
}
