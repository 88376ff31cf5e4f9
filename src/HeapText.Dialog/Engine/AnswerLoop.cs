using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>Keeps from talking for ever with another machine that answers each of our messages.</summary>
/// <remarks>
/// Such a machine makes no progress, so our answers go round in a circle of one or two texts, whatever it writes: then
/// they stop, until there is something new to say or an hour has passed. How fast texts come tells nothing: a phone
/// that was out of reach sends all at once. What a text changes is kept all the same.
/// </remarks>
internal static class AnswerLoop
{
    /// <summary>How many answers in a row may be one of the last two: with these two, five messages at most.</summary>
    private const int MostRepeats = 3;

    private static readonly Duration Forgotten = Duration.FromHours(1);

    /// <summary>The farmer with these answers noted, and the answers: none where they go round in a circle.</summary>
    public static (Farmer Farmer, IReadOnlyList<Outbound> Says) Break(
        Farmer farmer, IReadOnlyList<Outbound> says, Instant now)
    {
        if (says.Count == 0) return (farmer, says);
        var answer = Hash(says);
        if (farmer.LastAnswers is not { } last || now - last.Since >= Forgotten || now < last.Since)
            return (farmer with { LastAnswers = new LastAnswers(answer, answer, 0, now) }, says);
        var isNew = answer != last.Newest && answer != last.Before;
        if (!isNew && last.Repeats >= MostRepeats) return (farmer, []);
        var noted = new LastAnswers(
            answer, last.Newest, isNew ? 0 : last.Repeats + 1, isNew ? now : last.Since);
        return (farmer with { LastAnswers = noted }, says);
    }

    /// <summary>FNV-1a, 32 bits: the same in every process.</summary>
    private static uint Hash(IEnumerable<Outbound> says)
    {
        var hash = 2166136261;
        foreach (var letter in says.SelectMany(one => one.Text)) hash = unchecked((hash ^ letter) * 16777619);
        return hash;
    }
}
