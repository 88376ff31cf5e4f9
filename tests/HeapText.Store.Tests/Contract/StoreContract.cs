using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>What the port promises, run on each home.</summary>
public abstract partial class StoreContract : IAsyncLifetime
{
    protected const string Line = "sms";
    protected static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    protected static readonly Duration Lease = Duration.FromMinutes(1);

    protected IStore Store { get; private set; } = null!;

    protected FakeTimeProvider Clock { get; } = new(Noon.ToDateTimeOffset());

    protected static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => Store = await Open();

    public async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        await Discard();
        GC.SuppressFinalize(this);
    }

    /// <summary>Opens what this test has written so far, in a further store.</summary>
    protected abstract ValueTask<IStore> Open();

    /// <summary>Removes what this test has written.</summary>
    protected abstract ValueTask Discard();

    protected async ValueTask Reopen()
    {
        await Store.DisposeAsync();
        Store = await Open();
    }

    protected static Msisdn Number(int n) =>
        Msisdn.TryParse($"+999{n:D9}", out var number) ? number : throw new ArgumentOutOfRangeException(nameof(n));

    protected static Farmer Record(int n, int? group = null, Concern? concern = null) =>
        new() { Subject = $"s{n}", Line = "sms", Group = group, Concern = concern };

    protected Commit Turn(int n, long version, params Outbound[] send) => new()
    {
        Key = Store.KeyOf(Number(n)),
        Number = Number(n),
        ExpectedVersion = version,
        At = Noon,
        Farmer = Record(n),
        Send = send,
    };

    protected static Outbound Message(
        string id, Priority priority = Priority.Reply, Instant? notBefore = null, string line = Line) =>
        new(id, line, $"text of {id}", priority, notBefore ?? Noon, Noon + Duration.FromDays(1));

    protected async ValueTask Committed(Commit commit) =>
        Assert.Equal(CommitOutcome.Committed, await Store.Commit(commit, Cancel));

    protected ValueTask<TurnStart> Begin(int n, SeenId? message = null, Instant? now = null) =>
        Store.Begin(Store.KeyOf(Number(n)), message, now ?? Noon, Cancel);

    protected ValueTask<IReadOnlyList<Sending>> Take(Instant? now = null, int most = 10, string line = Line) =>
        Store.TakeNext(line, Priority.Notice, now ?? Noon, Lease, most, Cancel);

    protected async ValueTask<Sending> TakeOne(Instant? now = null) => Assert.Single(await Take(now));

    protected ValueTask<IReadOnlyList<SetAsideMessage>> SetAside(int most) => Store.SetAside(most, Cancel);

    protected ValueTask Settle(Sending sending, Settlement settlement) => Store.Settle(sending, settlement, Cancel);

    protected static IEnumerable<string> Ids(IEnumerable<Sending> taken) => taken.Select(sending => sending.Message.Id);
}
