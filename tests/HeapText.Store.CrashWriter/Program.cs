using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store;
using NodaTime;

// Commits turns of 64 farmers as fast as it can, until it is killed. Each line written says "farmer version": that turn
// was acknowledged. Arguments: the data folder.

const int Farmers = 64;
var output = TextWriter.Synchronized(new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true });
await using var store = await StoreFactory.Open(new StoreOptions { DataDirectory = args[0] });
await Task.WhenAll(Enumerable.Range(0, Farmers).Select(farmer => Task.Run(() => Turns(farmer))));

async Task Turns(int farmer)
{
    if (!Msisdn.TryParse($"+999{farmer:D9}", out var number)) throw new InvalidOperationException("Not a number.");
    var key = store.KeyOf(number);
    var at = Instant.FromUtc(2026, 3, 2, 12, 0);
    var version = (await store.Begin(key, null, at, CancellationToken.None)).Version;
    while (true)
    {
        var next = version + 1;
        var commit = new Commit
        {
            Key = key,
            Number = number,
            ExpectedVersion = version,
            Seen = new SeenId("sms", $"in-{next}"),
            At = at,
            Farmer = new Farmer { Subject = $"s{farmer}", Line = "sms", Group = (int)next },
            NextDue = at + Duration.FromSeconds(next),
            Send = [new($"s{farmer}-{next}", "sms", "text", Priority.Reply, at, at + Duration.FromDays(1))],
        };
        if (await store.Commit(commit, CancellationToken.None) != CommitOutcome.Committed)
            throw new InvalidOperationException("A lone writer met another.");
        version = next;
        output.WriteLine($"{farmer} {version}");
    }
}
