using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Screens;
using NodaTime;

namespace HeapText.Service.Tests.Fakes;

/// <summary>Says back what it hears, and reminds next day at 07:00 in the village. "POISON" fails at once, "POISON DUE"
/// when its reminder is due, "HELP" asks for the trainer, "TWICE" is answered with two messages,
/// "LATER" with a second one in a minute.</summary>
internal sealed class EchoConversation : IConversation
{
    public static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Africa/Nairobi"];
    private readonly HashSet<string> _poisoned = [];
    private readonly Lock _lock = new();
    private int _said;

    public int Heard { get; private set; }

    public int Woken { get; private set; }

    /// <summary>The poison works no more.</summary>
    public bool Healed { get; set; }

    public Reaction Hear(Farmer? farmer, string subject, string line, string text, Instant now)
    {
        lock (_lock) Heard++;
        if (text == "POISON" && !Healed) throw new InvalidOperationException("The text was POISON from +99910000001.");
        var after = farmer ?? new Farmer { Subject = subject, Line = line };
        if (text == "POISON DUE") lock (_lock) _poisoned.Add(after.Subject);
        if (text == "HELP") after = after with { Concern = new Concern { Reason = ConcernReason.Person, Since = now } };
        var says = text == "TWICE" ? new[] { "first", "second" } : ["Heard: " + text];
        if (text == "LATER")
        {
            var (first, second) = (Say(after, line, "At once", Priority.Reply, now),
                Say(after, line, "Later", Priority.Reply, now));
            return new Reaction(
                after, [first, second with { NotBefore = now + Duration.FromMinutes(1) }], Tomorrow(now));
        }

        return new Reaction(
            after, [.. says.Select(words => Say(after, line, words, Priority.Reply, now))], Tomorrow(now));
    }

    public Reaction Ring(Farmer? farmer, string subject, string line, Instant now) =>
        Hear(farmer, subject, line, "RING", now);

    /// <summary>Shows what was entered; the session goes on until "END". Each "SMS" sends a text besides.</summary>
    public ScreenReaction Dial(Farmer? farmer, string subject, Dialled step, Instant now)
    {
        if (step.Input == "POISON" && !Healed) throw new InvalidOperationException("The entry was POISON.");
        int heard;
        lock (_lock) heard = ++Heard;
        var after = farmer ?? new Farmer { Subject = subject, Line = step.Line };
        var says = step.Input == "SMS" ? new[] { Say(after, step.Line, "Besides", Priority.Reply, now) } : [];
        var screen = new Screen($"{heard.ToString(CultureInfo.InvariantCulture)}: {step.Input}", step.Input != "END");
        return new ScreenReaction(after, screen, says, Tomorrow(now));
    }

    public Reaction Wake(Farmer farmer, Instant now)
    {
        lock (_lock)
        {
            Woken++;
            if (_poisoned.Contains(farmer.Subject) && !Healed) throw new InvalidOperationException("Poison was due.");
        }

        return new Reaction(farmer, [Say(farmer, "practice", "Reminder", Priority.Reminder, now)], null);
    }

    /// <summary>Whoever was ever answered is reminded.</summary>
    public Instant? NextDue(Farmer farmer, Instant now) => Tomorrow(now);

    public static Instant Tomorrow(Instant now) =>
        now.InZone(Zone).Date.PlusDays(1).At(new LocalTime(7, 0)).InZoneStrictly(Zone).ToInstant();

    // The engine keeps the running number in the record; here one for all is enough.
    private Outbound Say(Farmer farmer, string line, string text, Priority priority, Instant now) => new(
        $"{farmer.Subject}-{Interlocked.Increment(ref _said).ToString(CultureInfo.InvariantCulture)}",
        line, text, priority, now, now + Duration.FromDays(2));
}
