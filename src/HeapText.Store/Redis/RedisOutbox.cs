using System.Diagnostics;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Taking messages and settling them.</summary>
internal sealed class RedisOutbox(IDatabase database, Keys keys, SendingReader sendings)
{
    /// <summary>Farmers to one script that gives back, so that none stalls the server.</summary>
    private const int MostTogether = 500;

    /// <summary>Leases up to so many heads of a line, by priority, then by the moment they became ready.</summary>
    public async Task<IReadOnlyList<Sending>> Take(string line, Priority through, long now, long until, int most)
    {
        var taken = new List<Sending>();
        for (var priority = Priority.Reply; priority <= through; priority++)
        {
            bool more;
            do
            {
                if (taken.Count >= most) return taken;
                var before = taken.Count;
                (var found, more) = await Partitions.Earliest(
                    database, partition => keys.Waiting(partition, line, priority), now, most - before);
                taken.AddRange(await Take(found, line, priority, now, until));
                if (more && taken.Count == before) return taken;
            }
            while (more);
        }
        return taken;
    }

    /// <summary>Ends a taken message.</summary>
    /// <param name="sending">The message.</param>
    /// <param name="settlement">How it ended.</param>
    /// <param name="at">When.</param>
    /// <param name="trace">What it leaves behind when it was sent.</param>
    public async Task<bool> Settle(Sending sending, Settlement settlement, Instant at, SentTrace? trace)
    {
        var lines = new List<string> { sending.Message.Line };
        while (true)
        {
            var result = await Script.Settle.Run(
                database,
                [keys.Outbox(sending.Key), keys.SetAside(sending.Key.Partition), keys.Sent(sending.Key),
                 .. lines.SelectMany(line => keys.WaitingAll(sending.Key.Partition, line))],
                [.. Arguments(sending, settlement, at, trace), .. lines.Select(line => (RedisValue)line)]);
            if (result.Resp2Type == ResultType.Integer) return (int)result == 1;
            lines.Add((string)result!);
        }
    }

    /// <summary>Makes ready the heads of a line that were taken before and wait for a moment after the given one;
    /// gives how many.</summary>
    public async Task<int> GiveBack(string line, long now, long after)
    {
        var given = 0;
        for (var priority = Priority.Reply; priority <= Priority.Notice; priority++)
        {
            var late = await Partitions.All(partition => database.SortedSetRangeByScoreAsync(
                keys.Waiting(partition, line, priority), start: after, exclude: Exclude.Start));
            var scripts = late.SelectMany((members, partition) => members.Chunk(MostTogether).Select(some =>
                Script.GiveBack.Run(
                    database,
                    [keys.Waiting(partition, line, priority),
                     .. some.Select(member => keys.Outbox(Keys.FarmerOf(member!)))],
                    [now, after, .. some])));
            given += (await Task.WhenAll(scripts)).Sum(count => (int)count);
        }
        return given;
    }

    private static RedisValue[] Arguments(Sending sending, Settlement settlement, Instant at, SentTrace? trace)
    {
        RedisValue[] common = [Keys.Member(sending.Key), sending.Message.Id, sending.Attempt];
        return settlement switch
        {
            Settlement.Sent =>
                [.. common, "sent", "", RecordFormat.Pack(trace!.Entry), SentMessage.KeptOfFarmer,
                 trace.At, (at - SentMessage.Kept).ToUnixTimeSeconds(),
                 (long)Keys.SentLifetime.TotalMilliseconds],
            Settlement.Retry retry => [.. common, "retry", Millis.Until(retry.At), "", 0, 0, 0, 0],
            Settlement.PutBack back =>
                [.. common, "back", Millis.Until(back.At), Millis.Until(sending.Message.NotBefore), 0, 0, 0, 0],
            Settlement.SetAside aside =>
                [.. common, "aside", "",
                 RecordFormat.Pack(new SetAsideEntry(sending.Key, at, aside.Reason, sending.Message)),
                 Keys.SetAsideKept, 0, 0, 0],
            _ => throw new UnreachableException(),
        };
    }

    private async Task<IEnumerable<Sending>> Take(
        List<Found> found, string line, Priority priority, long now, long until)
    {
        var scripts = found.GroupBy(farmer => farmer.Partition).Select(farmers => Script.Take.Run(
            database,
            [keys.Waiting(farmers.Key, line, priority),
             .. farmers.SelectMany(farmer => new[] { keys.Outbox(farmer.Key), keys.Farmer(farmer.Key) })],
            [now, until, StoredFarmer.HeadLength, .. farmers.Select(farmer => (RedisValue)Keys.Member(farmer.Key))]));
        var taken = (await Task.WhenAll(scripts)).SelectMany(Read).ToDictionary(sending => sending.Key);
        return found.Where(farmer => taken.ContainsKey(farmer.Key)).Select(farmer => taken[farmer.Key]);
    }

    private IEnumerable<Sending> Read(RedisResult result)
    {
        var fields = (RedisValue[])result!;
        for (var i = 0; i < fields.Length; i += 4)
        {
            var entry = (byte[])fields[i + 3]!;
            var sending = sendings.Read(
                Keys.FarmerOf(fields[i]!), StoredFarmer.SealedNumber(fields[i + 2]!),
                () => OutboxEntry.Message(entry), (int)fields[i + 1]);
            if (sending is not null) yield return sending;
        }
    }
}
