using System.Globalization;
using HeapText.Agronomy.Heap;

namespace HeapText.Service.Startup;

/// <summary>Reads the Methods section: how heaps are turned, where an office does it otherwise than the
/// product, and methods of its own.</summary>
internal static class MethodSettingsReader
{
    private const int LongestKey = 40;

    private static readonly string[] Known =
    [
        "Like", nameof(HeapMethod.CheckDays), nameof(HeapMethod.TurnDays), nameof(HeapMethod.SettleDays),
        nameof(HeapMethod.CuringDays), nameof(HeapMethod.MoreRestDays), nameof(HeapMethod.ReadyLowDays),
        nameof(HeapMethod.ReadyHighDays),
    ];

    /// <summary>Every method by its key; every fault is added to <paramref name="faults"/>.</summary>
    public static IReadOnlyDictionary<string, HeapMethod> Read(IConfigurationSection methods, List<string> faults)
    {
        var read = HeapMethods.All.ToDictionary(StringComparer.Ordinal);
        foreach (var section in methods.GetChildren())
        {
            SettingsReader.RefuseOthers(section, Known, faults);
            if (Start(section, faults) is not { } method) continue;
            method = method with
            {
                CheckDays = Days(section, nameof(method.CheckDays), method.CheckDays, faults),
                TurnDays = Days(section, nameof(method.TurnDays), method.TurnDays, faults),
                SettleDays = Whole(section, nameof(method.SettleDays), method.SettleDays, faults),
                CuringDays = Whole(section, nameof(method.CuringDays), method.CuringDays, faults),
                MoreRestDays = Whole(section, nameof(method.MoreRestDays), method.MoreRestDays, faults),
                ReadyLowDays = Whole(section, nameof(method.ReadyLowDays), method.ReadyLowDays, faults),
                ReadyHighDays = Whole(section, nameof(method.ReadyHighDays), method.ReadyHighDays, faults),
            };
            faults.AddRange(method.Faults().Select(fault => $"{section.Path}:{fault}."));
            read[method.Key] = method;
        }
        return read;
    }

    /// <summary>The method that the figures change: itself, or for a new key the one it is like.</summary>
    private static HeapMethod? Start(IConfigurationSection section, List<string> faults)
    {
        if (HeapMethods.All.TryGetValue(section.Key, out var own) && section["Like"] is null) return own;
        if (HeapMethods.All.TryGetValue(section["Like"] ?? "", out var like) && own is null
            && section.Key.Length <= LongestKey)
            return like with { Key = section.Key };
        faults.Add($"{section.Path}: a method of your own has a key of up to {LongestKey} letters that is not yet "
            + $"taken, and says in Like which one it starts from: {string.Join(", ", HeapMethods.All.Keys)}.");
        return null;
    }

    private static int Whole(IConfigurationSection section, string key, int usual, List<string> faults)
    {
        if (section[key] is not { } text) return usual;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)) return value;
        faults.Add($"{section.Path}:{key} is no whole number. Write a number of days.");
        return usual;
    }

    private static IReadOnlyList<int> Days(
        IConfigurationSection section, string key, IReadOnlyList<int> usual, List<string> faults)
    {
        if (section[key] is not { } text) return usual;
        List<int> days = [];
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var day)) days.Add(day);
            else
            {
                faults.Add($"{section.Path}:{key}: \"{word}\" is no day. Write days with blanks, like 3 4 5 12.");
                return usual;
            }
        }
        return days;
    }
}
