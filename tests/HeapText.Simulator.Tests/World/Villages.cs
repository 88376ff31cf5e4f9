using System.Collections.Concurrent;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Simulator.Tests.World;

/// <summary>The four villages of all scenarios, and farmers as they are at the start. All names are
/// invented.</summary>
internal static class Villages
{
    public const int FirstCode = 41;
    public const string Line = "sms";

    /// <summary>Zones with a gap, an overlap or a changed offset: tz database, as shipped with NodaTime.</summary>
    public static readonly string[] Zones =
        ["Africa/Cairo", "Africa/Casablanca", "Africa/Juba", "America/Asuncion"];

    /// <summary>Days at whose end one of the zones changes its offset within a week, and one with none.</summary>
    public static readonly Instant[] Starts =
    [
        Instant.FromUtc(2026, 4, 21, 3, 0), Instant.FromUtc(2026, 10, 27, 3, 0), Instant.FromUtc(2026, 2, 12, 3, 0),
        Instant.FromUtc(2021, 1, 29, 3, 0), Instant.FromUtc(2024, 10, 3, 3, 0), Instant.FromUtc(2026, 6, 9, 3, 0),
    ];

    private static readonly string[] Names = ["Upper Ziwani", "Lower Ziwani", "Marula Flats", "Kitalo Ridge"];

    private static readonly Lazy<DialogSet> AllDialogs = new(LoadDialogs);

    private static readonly ConcurrentDictionary<(int Village, Instant Start, Opening Opening), Reaction> Openings =
        new();

    /// <summary>The checkout.</summary>
    public static string Root { get; } = FindRoot();

    public static DialogSet Dialogs => AllDialogs.Value;

    public static Group GroupOf(int village, int? zone = null) => new(
        FirstCode + village, Names[village], village == 1 ? "sw" : "en", Zones[zone ?? village], "Trainer");

    public static Dictionary<int, Group> Groups() =>
        Enumerable.Range(0, Zones.Length).Select(village => GroupOf(village)).ToDictionary(group => group.Code);

    public static Conversation Conversation(IReadOnlyDictionary<int, Group> groups) =>
        new(Dialogs, groups, new Office());

    /// <summary>A farmer as known at the start; null for one who was never heard from.</summary>
    public static Reaction? Open(int village, Instant start, Opening opening, string subject) =>
        opening == Opening.Stranger
            ? null
            : Openings.GetOrAdd((village, start, opening), Grow) is { } grown
                ? grown with { Farmer = grown.Farmer with { Subject = subject } }
                : null;

    private static Reaction Grow((int Village, Instant Start, Opening Opening) of)
    {
        const string stock = "20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung";
        var talk = Conversation(Groups());
        var days = of.Opening switch
        {
            Opening.BuiltYesterday => 1,
            Opening.FirstTurningToday => 3,
            Opening.TurnedOnce => 4,
            _ => 0,
        };
        var now = of.Start - Duration.FromDays(days) - Duration.FromHours(1);
        string[] texts = ["english", $"join {FirstCode + of.Village}", "yes"];
        texts = of.Opening switch
        {
            Opening.StockBegun => [.. texts, "sawdust 4 dung 3"],
            Opening.RecipeSent => [.. texts, stock],
            _ => [.. texts, stock, "built", "2", "1"],
        };
        Reaction? last = null;
        foreach (var text in texts) last = talk.Hear(last?.Farmer, "s", Line, text, now);
        if (of.Opening == Opening.TurnedOnce)
            last = talk.Hear(last!.Farmer, "s", Line, "turned", of.Start - Duration.FromHours(20));
        return last!;
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "HeapText.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidDataException("HeapText.sln is in no folder above the tests.");
    }

    private static DialogSet LoadDialogs()
    {
        var (dialogs, faults) = DialogSet.Load(Path.Combine(Root, "dialogs"));
        return dialogs ?? throw new InvalidDataException(string.Join("\n", faults));
    }
}
