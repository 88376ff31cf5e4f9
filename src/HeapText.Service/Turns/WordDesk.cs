using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Service.Turns;

/// <summary>Where a trainer sees the words that farmers wait for, and explains them.</summary>
internal sealed class WordDesk(IStore store, Office office)
{
    /// <summary>What stands for "no material" where one is named.</summary>
    public const string Nothing = "none";

    private const string Explained = "word-explained";

    /// <summary>Farmers looked at, oldest concern first.</summary>
    private const int MostWaiting = 10_000;

    /// <summary>Farmers who wait for the meaning of a word of theirs, with the district that decides it.</summary>
    public async Task<IReadOnlyList<WaitingFarmer>> Waiting(CancellationToken cancel) =>
        [.. (await store.Concerns(MostWaiting, cancel))
            .Where(open => open.Farmer is { UnknownWords.Count: > 0, Group: not null })
            .Select(open => new WaitingFarmer(open, office.DistrictOf(open.Farmer.Group!.Value)))];

    /// <summary>The districts of all groups.</summary>
    public async Task<IReadOnlyList<string>> Districts(CancellationToken cancel) =>
        [.. (await store.Groups(cancel)).Select(group => office.DistrictOf(group.Code)).Distinct()
            .Order(StringComparer.Ordinal)];

    /// <summary>Remembers what a word means; who explained it stands in the audit trail.</summary>
    public async Task Explain(OwnWord word, string actor, Instant at, CancellationToken cancel)
    {
        // First, so that no word is ever changed without a trace; a retry may leave the trace twice.
        var subject = $"{word.District} {word.Word} {word.Material ?? Nothing}";
        await store.Audit(new AuditEntry(at, actor, Explained, subject), cancel);
        await store.ExplainWord(word, cancel);
    }
}

/// <summary>A farmer who waits for the meaning of a word.</summary>
/// <param name="Open">The farmer, with the words.</param>
/// <param name="District">Where the words are used.</param>
internal sealed record WaitingFarmer(OpenConcern Open, string District);
