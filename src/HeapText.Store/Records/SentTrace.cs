using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using NodaTime;

namespace HeapText.Store.Records;

/// <summary>What settling a sent message leaves behind.</summary>
/// <param name="At">When the gateway took it. [s since 1970-01-01T00:00Z]</param>
/// <param name="Entry">For the farmer's log.</param>
/// <param name="Marks">What receipts find it by, one for each part.</param>
internal sealed record SentTrace(long At, SentEntry Entry, IReadOnlyList<byte[]> Marks)
{
    public static SentTrace Of(Outbound message, Settlement.Sent sent, Instant at, NumberVault vault)
    {
        var line = sent.Over ?? message.Line;
        IReadOnlyList<string> references = sent.References.Count > 0
            ? [.. sent.References.Distinct().Take(SentEntry.MostParts)]
            : [message.Id];
        return new SentTrace(
            at.ToUnixTimeSeconds(),
            SentEntry.Of(message, line, references.Count),
            [.. references.Select(reference => vault.MarkOf(line, reference))]);
    }
}
