using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Startup;

/// <summary>Stands in until the engine of the Dialog project is merged: says back what it heard, and reminds next day.</summary>
internal sealed class InterimConversation : IConversation
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Africa/Nairobi"];

    public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now)
    {
        var tomorrow = now.InZone(Zone).Date.PlusDays(1).At(new LocalTime(7, 0)).InZoneLeniently(Zone).ToInstant();
        var concern = text == "HELP" ? new Concern { Reason = "asked", Since = now } : farmer?.Concern;
        var after = (farmer ?? new Farmer { Subject = subject }) with { Concern = concern };
        return new Reaction(after, [Say(after, line, "Heard: " + text, Priority.Reply, now)], tomorrow);
    }

    public Reaction Wake(Farmer farmer, Instant now) =>
        new(farmer, [Say(farmer, "practice", "Reminder", Priority.Reminder, now)], null);

    private static Outbound Say(Farmer farmer, string line, string text, Priority priority, Instant now) => new(
        $"{farmer.Subject}-{now.ToUnixTimeTicks().ToString(CultureInfo.InvariantCulture)}", line, text, priority,
        now, now + Duration.FromDays(1));
}
