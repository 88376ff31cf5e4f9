using HeapText.Service.Practice;
using HeapText.Service.Tests.Fakes;
using NodaTime;

namespace HeapText.Service.Tests.Practice;

public sealed class PracticeJournalTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);

    [Fact]
    public async Task Keep_OneThatCannotBeWritten_FailsItsCallerAndTheNextIsKept()
    {
        using var folder = new TempFolder();
        await using var journal = PracticeJournal.Open(folder.Path);
        var limit = TimeSpan.FromSeconds(10);

        await Assert.ThrowsAsync<InvalidOperationException>(
            () => journal.Keep(Message("1") with { Text = null! }).WaitAsync(limit, Token));
        await journal.Keep(Message("2")).WaitAsync(limit, Token);

        Assert.Equal("2", Assert.Single(await journal.Messages(RunningService.Number, 0, bothWays: false)).Id);
    }

    private static PracticeMessage Message(string id) =>
        new(0, "out", RunningService.Number, id, "text", "GSM7", 1, Noon);
}
