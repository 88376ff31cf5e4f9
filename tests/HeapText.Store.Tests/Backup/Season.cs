using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HeapText.Store.Tests.Backup;

/// <summary>A store with something of every kind in it, and all that can be seen of it through the port.</summary>
internal static class Season
{
    public const int Farmers = 6;
    public const int MessagesMade = 17;
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private const string Line = "lake";
    private static readonly Duration Lease = Duration.FromMinutes(1);
    private static readonly LineBudget Budget = new(Line, 100, 10, null, DateTimeZone.Utc);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static FakeTimeProvider ClockAt(Instant moment) => new(moment.ToDateTimeOffset());

    public static Msisdn Number(int n) => Msisdn.TryParse(
        "+999700" + n.ToString("D6", CultureInfo.InvariantCulture), out var number)
        ? number
        : throw new ArgumentOutOfRangeException(nameof(n));

    /// <summary>Writes the season, as of <see cref="Noon"/>.</summary>
    public static async Task Write(IStore store)
    {
        await store.PutGroup(new Group(41, "Upper Ziwani", "en", "Africa/Nairobi", "Trainer"), Cancel);
        await store.PutGroup(new Group(42, "Lower Ziwani", "sw", "Africa/Nairobi", "Trainer"), Cancel);
        await store.ExplainWord(new OwnWord("41", "mbondo", "sw", "goat-manure"), Cancel);
        for (var n = 0; n < 3; n++)
            await store.Audit(new AuditEntry(Noon + Duration.FromSeconds(n), "office", $"did-{n}", "41"), Cancel);
        for (var n = 1; n <= Farmers; n++) await Turns(store, n);

        // Of the six heads: one sent, one given up, one postponed, three under way.
        var taken = (await store.TakeNext(Line, Priority.Notice, Noon, Lease, Farmers, Cancel))
            .OrderBy(one => one.Message.Id).ToList();
        await store.Settle(taken[0], new Settlement.Sent(["r-1", "r-2"]), Cancel);
        await store.Settle(taken[1], new Settlement.SetAside("refused"), Cancel);
        await store.Settle(taken[2], new Settlement.Retry(Noon + Duration.FromHours(5)), Cancel);
        await store.Note(new Receipt(Line, "r-1", DeliveryState.Delivered, Noon), Noon, Cancel);
        await store.Note(new Receipt(Line, $"{taken[3].Message.Id}", DeliveryState.Delivered, Noon), Noon, Cancel);
        await store.ClaimDue(Noon, Lease, 1, Cancel);
        await store.Allow(Budget, [new Load(Priority.Reply, 7)], Noon, Cancel);
    }

    /// <summary>What is seen of it once all leases have ended, with nothing left to claim or take.</summary>
    public static async Task<List<string>> Seen(IStore store)
    {
        var seen = new List<string>();
        foreach (var group in await store.Groups(Cancel)) seen.Add($"{group}");
        foreach (var word in await store.OwnWords(Cancel)) seen.Add($"{word}");
        foreach (var entry in await store.AuditTrail(10, Cancel)) seen.Add($"{entry}");
        foreach (var aside in await store.SetAside(10, Cancel)) seen.Add($"{aside} {aside.To.Value}");
        foreach (var open in await store.Concerns(10, Cancel))
            seen.Add($"{open.Number.Value} {open.Concern.Reason} {open.Concern.Since}");
        foreach (var code in new[] { 41, 42 })
            seen.Add(string.Join(' ', (await store.Members(code, Cancel)).Select(key => key.Hash).Order()));
        for (var n = 1; n <= Farmers; n++) seen.AddRange(await SeenOf(store, n));
        seen.AddRange(await Due(store));
        seen.AddRange(await Messages(store));
        seen.Add($"{await store.Note(new Receipt(Line, "r-1", DeliveryState.Failed, Noon), Noon, Cancel)}");
        seen.Add($"{await store.Note(new Receipt(Line, "r-2", DeliveryState.Delivered, Noon), Noon, Cancel)}");
        for (var n = 1; n <= Farmers; n++)
            foreach (var sent in await store.Sent(store.KeyOf(Number(n)), Cancel)) seen.Add($"{sent}");
        var later = Noon + Duration.FromHours(6);
        seen.Add($"{(await store.Allow(Budget, [new Load(Priority.Reply, 4)], later, Cancel)).Granted} more allowed");
        return seen;
    }

    private static async Task Turns(IStore store, int n)
    {
        for (var version = 1; version <= 2; version++)
            Assert.Equal(CommitOutcome.Committed, await store.Commit(Turn(store, n, version), Cancel));
    }

    private static Commit Turn(IStore store, int n, int version) => new()
    {
        Key = store.KeyOf(Number(n)),
        Number = Number(n),
        ExpectedVersion = version - 1,
        Seen = new SeenId(Line, $"in-{version}"),
        Answer = version == 2 && n == 1 ? new Screen("1 yes 2 no", Open: true) : null,
        At = Noon,
        NextDue = n == Farmers ? null : Noon + Duration.FromHours(n - 1),
        Farmer = new Farmer
        {
            Subject = $"s{n}",
            Line = Line,
            Group = n % 2 == 0 ? 41 : null,
            MessagesMade = MessagesMade,
            Concern = n == 3 ? new Concern { Reason = ConcernReason.Person, Since = Noon } : null,
        },
        Send =
        [
            Message($"s{n}-{(2 * version) - 1}", Noon - Duration.FromMinutes(10)),
            Message($"s{n}-{2 * version}", Noon + Duration.FromHours(version)),
        ],
    };

    private static Outbound Message(string id, Instant notBefore) =>
        new(id, Line, $"text of {id}", Priority.Reply, notBefore, Noon + Duration.FromDays(9));

    private static async Task<List<string>> SeenOf(IStore store, int n)
    {
        var key = store.KeyOf(Number(n));
        var seen = new List<string>();
        for (var version = 1; version <= 3; version++)
        {
            var start = await store.Begin(key, new SeenId(Line, $"in-{version}"), Noon, Cancel);
            // Numbers of messages go on from another one; see the test of that.
            var farmer = start.Farmer! with { MessagesMade = 0, Heaps = [], UnknownWords = [] };
            seen.Add($"{farmer.Subject} {start.Version} {start.Number!.Value.Value} {start.Seen} {start.Answer}");
        }
        return seen;
    }

    private static async Task<List<string>> Due(IStore store)
    {
        var seen = new List<string>();
        for (var hours = 0; hours < Farmers; hours++)
        {
            var now = Noon + Duration.FromHours(hours) + Lease + Lease;
            foreach (var key in await store.ClaimDue(now, Duration.FromDays(9), 10, Cancel))
                seen.Add($"{hours} {key.Hash}");
        }
        return seen;
    }

    private static async Task<List<string>> Messages(IStore store)
    {
        var seen = new List<string>();
        var now = Noon + Duration.FromHours(6);
        while (await store.TakeNext(Line, Priority.Notice, now, Lease, 10, Cancel) is { Count: > 0 } taken)
        {
            foreach (var one in taken.OrderBy(one => one.Message.Id, StringComparer.Ordinal))
            {
                seen.Add($"{one.To.Value} {one.Attempt} {one.Message}");
                await store.Settle(one, new Settlement.Sent([]), Cancel);
            }
        }
        return seen;
    }
}
