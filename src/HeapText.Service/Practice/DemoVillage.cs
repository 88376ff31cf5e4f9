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

    /// <summary>Plays a village into the store.</summary>
    internal async Task Seed(DemoScript script, bool withFarmers, CancellationToken cancel)
    {
        foreach (var group in script.Groups)
        {
            await groups.Put(
                new Group(group.Code, group.Name, group.Language, script.Zone, script.Officer), cancel);
        }

        if (!withFarmers) return;
        var zone = DateTimeZoneProviders.Tzdb[script.Zone];
        var today = clock.Now.InZone(zone).Date;
        var cues = script.Texts
            .Select((text, place) => (At: InstantOf(text, today, zone), Message: MessageOf(text, place)))
            .Where(cue => cue.At <= clock.Now)
            .OrderBy(cue => cue.At)
            .Select(cue => (cue.At, (Func<Task>)(() => turns.Hear(cue.Message, cancel))))
            .ToList();
        await time.Play(cues, cancel);
    }

    private static Instant InstantOf(DemoText text, LocalDate today, DateTimeZone zone) =>
        today.PlusDays(-text.Day).At(Hour.Parse(text.At).GetValueOrThrow()).InZoneLeniently(zone).ToInstant();

    private static Inbound MessageOf(DemoText text, int place) =>
        Msisdn.TryParse(text.Phone, out var phone)
            ? new Inbound(string.Create(CultureInfo.InvariantCulture, $"demo-{place}"), InboundLine.Practice, phone,
                text.Text)
            : throw new InvalidDataException($"demo-village.yml: text {place + 1} has no phone like +99910000001.");

    private static DemoScript Read()
    {
        using var stream = typeof(DemoVillage).Assembly.GetManifestResourceStream("demo-village.yml")
            ?? throw new InvalidDataException("demo-village.yml is not part of the program.");
        using var reader = new StreamReader(stream);
        return new DeserializerBuilder().WithNamingConvention(CamelCaseNamingConvention.Instance).Build()
            .Deserialize<DemoScript>(reader);
    }
}
