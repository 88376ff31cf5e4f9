using HeapText.Dialog.Ports;
using NodaTime;

namespace HeapText.Store.Tests.Contract;

/// <summary>What a writer was told is durable, held against what is there after a crash. Turn n of a farmer answers
/// message "in-n", sets its group to n and sends one message "sFARMER-n".</summary>
internal sealed class Acknowledged
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private readonly Dictionary<int, long> _versions = [];
    private readonly Lock _lock = new();

    public long Total
    {
        get
        {
            lock (_lock) return _versions.Values.Sum();
        }
    }

    public static Msisdn Number(int farmer) =>
        Msisdn.TryParse($"+999{farmer:D9}", out var number)
            ? number
            : throw new ArgumentOutOfRangeException(nameof(farmer));

    public static Commit Turn(IStore store, int farmer, long version) => new()
    {
        Key = store.KeyOf(Number(farmer)),
        Number = Number(farmer),
        ExpectedVersion = version - 1,
        Seen = new SeenId("sms", $"in-{version}"),
        At = Noon,
        Farmer = new() { Subject = $"s{farmer}", Line = "sms", Group = (int)version },
        Send = [new($"s{farmer}-{version}", "sms", "text", Priority.Reply, Noon, Noon + Duration.FromDays(1))],
    };

    public void Note(int farmer, long version)
    {
        lock (_lock) _versions[farmer] = version;
    }

    /// <summary>Every acknowledged turn is there, and every turn that is there is whole.</summary>
    public async Task Check(IStore store, CancellationToken cancel)
    {
        foreach (var (farmer, version) in _versions.ToArray())
        {
            var key = store.KeyOf(Number(farmer));
            var start = await store.Begin(key, null, Noon, cancel);
            Assert.True(start.Version >= version, $"farmer {farmer}: {version} acknowledged, {start.Version} kept");
            Assert.Equal((int)start.Version, start.Farmer!.Group);
            Assert.Contains(key, await store.Members((int)start.Version, cancel));
            for (var turn = 1; turn <= start.Version; turn++)
                Assert.True((await store.Begin(key, new SeenId("sms", $"in-{turn}"), Noon, cancel)).Seen);
            Note(farmer, start.Version);
        }
    }

    /// <summary>Every turn's message comes once, in order.</summary>
    public async Task CheckOutbox(IStore store, CancellationToken cancel)
    {
        var sent = _versions.Keys.ToDictionary(farmer => store.KeyOf(Number(farmer)), farmer => (farmer, last: 0L));
        var lease = Duration.FromMinutes(1);
        while (await store.TakeNext("sms", Priority.Notice, Noon, lease, 500, cancel) is { Count: > 0 } some)
        {
            foreach (var sending in some)
            {
                var (farmer, last) = sent[sending.Key];
                Assert.Equal($"s{farmer}-{last + 1}", sending.Message.Id);
                sent[sending.Key] = (farmer, last + 1);
            }
            await Task.WhenAll(
                some.Select(async sending => await store.Settle(sending, new Settlement.Sent([]), cancel)));
        }
        Assert.All(sent.Values, farmer => Assert.Equal(_versions[farmer.farmer], farmer.last));
    }
}
