using System.Collections.Concurrent;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>What a turn starts from, and its effect.</summary>
internal sealed class RedisTurns(IDatabase database, Keys keys, NumberVault vault)
{
    private readonly ConcurrentDictionary<string, bool> _linesNoted = new();

    public async Task<TurnStart> Begin(FarmerKey key, SeenId? message, Instant now)
    {
        var mark = message is { } seen ? vault.MarkOf(seen) : [];
        var result = await Script.Begin.Run(
            database, [keys.Farmer(key), keys.Seen(key), keys.Answers(key)],
            [mark, Millis.Until(now - SeenId.Kept), Millis.Until(now - Screen.Kept)]);
        var stored = (byte[]?)result[0];
        if (stored is null) return new TurnStart(null, 0, null, false);
        return new TurnStart(
            RecordFormat.Unpack<Farmer>(StoredFarmer.Record(stored)), StoredFarmer.Version(stored),
            vault.Unseal(key, StoredFarmer.SealedNumber(stored)), (int)result[1] == 1,
            (byte[]?)result[2] is { } screen ? RecordFormat.Unpack<Screen>(screen) : null);
    }

    public async Task<CommitOutcome> Commit(Commit commit)
    {
        var lines = commit.Send.Select(message => message.Line).Distinct().ToList();
        var effect = Effect(commit);
        var messages = commit.Send.SelectMany((message, place) => new RedisValue[]
        {
            Millis.Until(message.NotBefore), OutboxEntry.Of(message, commit.ExpectedVersion + 1, place),
        }).ToArray();
        foreach (var line in lines) await Note(line);
        while (true)
        {
            var result = await Script.Commit.Run(
                database, KeysOf(commit.Key, lines),
                [.. effect, lines.Count, .. lines.Select(line => (RedisValue)line), .. messages]);
            if (result.Resp2Type == ResultType.Integer) return (CommitOutcome)(int)result;
            lines.Add((string)result!);
        }
    }

    private RedisValue[] Effect(Commit commit)
    {
        var stored = StoredFarmer.Join(
            commit.ExpectedVersion + 1, vault.Seal(commit.Key, commit.Number), RecordFormat.Pack(commit.Farmer));
        return
        [
            StoredFarmer.VersionBytes(commit.ExpectedVersion),
            stored,
            Keys.Member(commit.Key),
            commit.Seen is { } seen ? vault.MarkOf(seen) : "",
            Millis.Now(commit.At),
            Millis.Until(commit.At - SeenId.Kept),
            (long)Keys.SeenLifetime.TotalMilliseconds,
            commit.NextDue is { } due ? Millis.Until(due) : "",
            commit.Farmer.Group is { } group ? group : "",
            commit.Farmer.Concern is { } concern ? Millis.Until(concern.Since) : "",
            commit.Answer is { } screen ? RecordFormat.Pack(screen) : "",
            (long)Screen.Kept.TotalMilliseconds,
        ];
    }

    private RedisKey[] KeysOf(FarmerKey key, IEnumerable<string> lines) =>
    [
        keys.Farmer(key), keys.Seen(key), keys.Due(key.Partition), keys.Members(key.Partition),
        keys.Concerns(key.Partition), keys.FarmerCount(key.Partition), keys.Outbox(key), keys.Answers(key),
        .. lines.SelectMany(line => keys.WaitingAll(key.Partition, line)),
    ];

    /// <summary>Notes a line's name before its first message, so that the next wake can be found after a
    /// restart.</summary>
    private async Task Note(string line)
    {
        if (_linesNoted.ContainsKey(line)) return;
        await database.SetAddAsync(keys.Lines, line);
        _linesNoted[line] = true;
    }
}
