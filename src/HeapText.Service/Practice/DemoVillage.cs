using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Service.Hooks;
using HeapText.Service.Turns;
using NodaTime;
using NodaTime.Text;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace HeapText.Service.Practice;

/// <summary>Fills an empty practice store: the groups of the demo village, and its farmers' seasons up to
/// today.</summary>
/// <remarks>Each text goes through the same turn as any other, at its own time, so the records are what they would
/// be.</remarks>
internal sealed class DemoVillage(
    IStore store, GroupBook groups, TurnRunner turns, PracticeTime time, PracticeClock clock,
    PracticeJournal journal)
{
    private static readonly LocalTimePattern Hour = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>Seeds a store that holds no records; leaves any other as it is. The journal says so until it is
    /// done, for it to be made anew when it was cut short.</summary>
    /// <param name="withFarmers">False seeds the groups only: their codes are the way in.</param>
    /// <param name="cancel">Ends it early.</param>
    public async Task Seed(bool withFarmers, CancellationToken cancel)
    {
        if (!await store.IsEmpty(cancel)) return;
        await journal.KeepSeeding(true);
        await Seed(Read(), withFarmers, cancel);
        await journal.KeepSeeding(false);
    }

    /// <summary>Plays villages into the store.</summary>
    internal async Task Seed(IReadOnlyList<DemoScript> villages, bool withFarmers, CancellationToken cancel)
    {
        foreach (var one in villages)
            await groups.Put(new Group(one.Code, one.Name, one.Language, one.Zone, one.Officer), cancel);
        if (!withFarmers) return;
        var now = clock.Now;
        var cues = villages.SelectMany(Cues)
            .Where(cue => cue.At <= now)
            .OrderBy(cue => cue.At)
            .Select(cue => (cue.At, (Func<Task>)(() => turns.Hear(cue.Message, cancel))))
            .ToList();
        await time.Play(cues, cancel);
    }

    private IEnumerable<(Instant At, Inbound Message)> Cues(DemoScript village)
    {
        var zone = DateTimeZoneProviders.Tzdb[village.Zone];
        var today = clock.Now.InZone(zone).Date;
        return village.Texts.Select((text, place) => (InstantOf(text, today, zone), MessageOf(village, text, place)));
    }

    private static Instant InstantOf(DemoText text, LocalDate today, DateTimeZone zone) =>
        today.PlusDays(-text.Day).At(Hour.Parse(text.At).GetValueOrThrow()).InZoneLeniently(zone).ToInstant();

    private static Inbound MessageOf(DemoScript village, DemoText text, int place) =>
        Msisdn.TryParse(text.Phone, out var phone)
            ? new Inbound(string.Create(CultureInfo.InvariantCulture, $"demo-{village.Code}-{place}"),
                InboundLine.Practice, phone, text.Text)
            : throw new InvalidDataException(
                $"demo-village-{village.Code}.yml: text {place + 1} has no phone like +99910000001.");

    private static List<DemoScript> Read()
    {
        var assembly = typeof(DemoVillage).Assembly;
        var yaml = new DeserializerBuilder().WithNamingConvention(CamelCaseNamingConvention.Instance).Build();
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith("demo-village-", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
                return yaml.Deserialize<DemoScript>(reader);
            })];
    }
}
