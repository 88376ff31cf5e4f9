using System.Diagnostics;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace HeapText.Store.Tests.Sqlite;

/// <summary>What the disk, the queue and one bad step can do.</summary>
public sealed class SqliteFaultTests : IAsyncDisposable
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private static readonly NumberVault Vault = new(new byte[NumberVault.SecretLength]);
    private readonly string _folder = Directory.CreateTempSubdirectory("heaptext-store-").FullName;
    private readonly SqliteStore _store;

    public SqliteFaultTests() =>
        _store = SqliteStore.Open(_folder, Vault, NullLogger.Instance, TimeProvider.System, queueLimit: 4);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Open_Always_FlushesEachTransactionToDisk()
    {
        Assert.Equal("wal", await _store.Writer.Do(session => session.Scalar("PRAGMA journal_mode"), Cancel));
        Assert.Equal(2L, await _store.Writer.Do(session => session.Scalar("PRAGMA synchronous"), Cancel));
        Assert.Equal(2000L, await _store.Writer.Do(session => session.Scalar("PRAGMA wal_autocheckpoint"), Cancel));
    }

    [Fact]
    public async Task Commit_QueueFull_IsRefusedAtOnceAndTheOthersAreKept()
    {
        List<Task<CommitOutcome>> waiting;
        using (Locked())
        {
            waiting = [Commit(1)];
            await WriterIsStuck();
            waiting.AddRange(Enumerable.Range(2, 4).Select(Commit));

            await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(9));
        }

        Assert.All(await Task.WhenAll(waiting), outcome => Assert.Equal(CommitOutcome.Committed, outcome));
        Assert.Equal(0, await Version(9));
    }

    [Fact]
    public async Task Commit_FileStalled_IsUnavailableWithinFiveSecondsAndWellAfterwards()
    {
        var since = Stopwatch.StartNew();
        using (Locked()) await Assert.ThrowsAsync<StoreUnavailableException>(() => Commit(1));

        Assert.True(since.Elapsed < TimeSpan.FromSeconds(5));
        Assert.Equal(CommitOutcome.Committed, await Commit(1));
    }

    [Fact]
    public async Task Commit_CallerGaveUpBeforeItsTurn_HasNoEffect()
    {
        using var giveUp = new CancellationTokenSource();
        Task<CommitOutcome> stuck, abandoned;
        using (Locked())
        {
            stuck = Commit(1);
            await WriterIsStuck();
            abandoned = _store.Commit(Turn(2), giveUp.Token).AsTask();
            await giveUp.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => abandoned);
        }

        await stuck;
        Assert.Equal(CommitOutcome.Committed, await Commit(3));
        Assert.Equal(0, await Version(2));
    }

    [Fact]
    public async Task Commit_DiskFull_IsUnavailableWithNothingDone()
    {
        await Commit(1);
        await Pragma("PRAGMA max_page_count = 1");
        var large = Turn(2) with { Farmer = new Farmer { Subject = new string('x', 100_000), Line = "sms" } };

        await Assert.ThrowsAsync<StoreUnavailableException>(async () => await _store.Commit(large, Cancel));
        Assert.Equal(0, await Version(2));

        await Pragma("PRAGMA max_page_count = 100000");
        Assert.Equal(CommitOutcome.Committed, await _store.Commit(large, Cancel));
        Assert.Equal(1, await Version(1));
    }

    [Fact]
    public async Task Do_OneStepOfATransactionThrows_TheOthersAreKept()
    {
        Task<CommitOutcome> first, last;
        Task<int> bad;
        using (Locked())
        {
            var stuck = Commit(8);
            await WriterIsStuck();
            first = Commit(1);
            bad = _store.Writer.Do<int>(WriteThenThrow, Cancel).AsTask();
            last = Commit(2);
        }

        await Assert.ThrowsAsync<InvalidOperationException>(() => bad);
        Assert.Equal([CommitOutcome.Committed, CommitOutcome.Committed], await Task.WhenAll(first, last));
        Assert.Empty(await _store.Groups(Cancel));
    }

    [Fact]
    public async Task Do_TransactionCannotBegin_IsUnavailableAndWellAfterwards()
    {
        var session = Session.Open(Path.Combine(_folder, SqliteStore.FileName), TimeSpan.FromSeconds(1));
        session.Run("BEGIN");
        await using var writer = new SqliteWriter(session, NullLogger.Instance);

        await Assert.ThrowsAsync<StoreUnavailableException>(async () => await writer.Do(_ => 1, Cancel));

        Assert.Equal(1, await writer.Do(_ => 1, Cancel));
    }

    [Fact]
    public async Task Dispose_StepsWait_FinishesThem()
    {
        Task<CommitOutcome>[] waiting;
        using (Locked())
        {
            waiting = [Commit(1)];
            await WriterIsStuck();
            waiting = [.. waiting, .. Enumerable.Range(2, 4).Select(Commit)];
        }

        await _store.DisposeAsync();

        Assert.All(await Task.WhenAll(waiting), outcome => Assert.Equal(CommitOutcome.Committed, outcome));
    }

    [Fact]
    public async Task Commit_MonthsOfMessages_SeenMarksStayFew()
    {
        for (var day = 0; day < 300; day++)
        {
            var at = Noon + Duration.FromDays(day);
            await _store.Commit(
                Turn(1) with { ExpectedVersion = day, Seen = new SeenId("sms", $"in-{day}"), At = at }, Cancel);
        }

        var seen = await _store.Writer.Do(session => session.Scalar("SELECT COUNT(*) FROM seen"), Cancel);
        Assert.InRange((long)seen!, 7, 60);
    }

    [Fact]
    public async Task Settle_ThousandsSetAside_KeepsTheNewest()
    {
        await _store.Writer.Do(FillSetAside, Cancel);
        await _store.Commit(
            Turn(1) with { Send = [new("a", "sms", "text", Priority.Reply, Noon, Noon)] }, Cancel);

        var sending = Assert.Single(
            await _store.TakeNext("sms", Priority.Notice, Noon, Duration.FromMinutes(1), 1, Cancel));
        await _store.Settle(sending, new Settlement.SetAside("expired"), Cancel);

        var kept = await _store.Writer.Do(session => session.Scalar("SELECT COUNT(*) FROM set_aside"), Cancel);
        Assert.Equal((long)Tables.SetAside.Kept, kept);
        Assert.Equal("a", Assert.Single(await _store.SetAside(1, Cancel)).Message.Id);
    }

    [Fact]
    public async Task TakeNext_OneMessageUnreadable_GivesTheOthers()
    {
        foreach (var n in new[] { 1, 2 })
            await _store.Commit(
                Turn(n) with { Send = [new($"s{n}-1", "sms", "text", Priority.Reply, Noon, Noon)] }, Cancel);
        await Pragma("UPDATE outbox SET message = x'00' WHERE id = 's1-1'");

        var sending = Assert.Single(
            await _store.TakeNext("sms", Priority.Notice, Noon, Duration.FromMinutes(1), 10, Cancel));

        Assert.Equal("s2-1", sending.Message.Id);
    }

    private static Commit Turn(int n)
    {
        Assert.True(Msisdn.TryParse($"+999{n:D9}", out var number));
        return new Commit
        {
            Key = Vault.KeyOf(number),
            Number = number,
            ExpectedVersion = 0,
            At = Noon,
            Farmer = new() { Subject = $"s{n}", Line = "sms" },
        };
    }

    private static int WriteThenThrow(Session session)
    {
        session.Run(Tables.Groups.Put, 41, Array.Empty<byte>());
        throw new InvalidOperationException("A step that fails.");
    }

    private static bool FillSetAside(Session session)
    {
        for (var i = 0; i < Tables.SetAside.Kept; i++) session.Run(Tables.SetAside.Add, 1, Array.Empty<byte>());
        return true;
    }

    private Task<CommitOutcome> Commit(int n) => _store.Commit(Turn(n), Cancel).AsTask();

    private async Task<long> Version(int n) => (await _store.Begin(Turn(n).Key, null, Noon, Cancel)).Version;

    private async Task Pragma(string pragma) => await _store.Writer.Do(session => session.Scalar(pragma), Cancel);

    /// <summary>Another program holds the file until this is disposed.</summary>
    private Session Locked()
    {
        var other = Session.Open(Path.Combine(_folder, SqliteStore.FileName), TimeSpan.FromSeconds(1));
        other.Run("BEGIN IMMEDIATE");
        return other;
    }

    private async Task WriterIsStuck()
    {
        while (_store.Writer.Waiting > 0) await Task.Yield();
    }
}
