using System.Globalization;
using HeapText.Dialog.Ports;
using HeapText.Store.Backup;
using HeapText.Store.Records;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Reads all that belongs to a farmer at one moment.</summary>
internal sealed class FarmerReading(IDatabase database, Keys keys)
{
    /// <summary>The farmer; null when there is none.</summary>
    public async Task<FarmerCopy?> Read(FarmerKey key)
    {
        var result = (RedisResult[])(await Script.Copy.Run(
            database,
            [keys.Farmer(key), keys.Seen(key), keys.Answers(key), keys.Outbox(key), keys.Sent(key),
             keys.Due(key.Partition), keys.Members(key.Partition), keys.Concerns(key.Partition)],
            [Keys.Member(key)]))!;
        if ((byte[]?)result[0] is not { } stored) return null;
        var seen = Pairs(result[1]).Select(pair => new SeenCopy(pair.First, Whole(pair.Second))).ToList();
        return new FarmerCopy
        {
            Key = key,
            Version = StoredFarmer.Version(stored),
            Number = StoredFarmer.SealedNumber(stored).ToArray(),
            Record = StoredFarmer.Record(stored).ToArray(),
            Due = Moment(result[5]),
            Group = (int?)Moment(result[6]),
            ConcernSince = Moment(result[7]),
            Seen = seen,
            Answers = Answers(Pairs(result[2]), seen),
            Outbox = [.. Pairs(result[3]).Select(pair => Message(pair.First, Whole(pair.Second)))],
            Sent = [.. Pairs(result[4]).Select(pair => new SentCopy(Whole(pair.Second), pair.First))],
        };
    }

    // An answer is as old as its mark.
    private static List<AnswerCopy> Answers(IEnumerable<(byte[] Mark, byte[] Screen)> answers, List<SeenCopy> seen)
    {
        var at = seen.ToDictionary(one => Convert.ToHexString(one.Mark), one => one.At);
        return [.. answers.Where(one => at.ContainsKey(Convert.ToHexString(one.Mark)))
            .Select(one => new AnswerCopy(one.Mark, at[Convert.ToHexString(one.Mark)], one.Screen))];
    }

    // The score of a message that was taken tells how often; when it was not to go before, the message itself.
    private static OutboxCopy Message(byte[] entry, long score)
    {
        var (priority, line, id, packed) = OutboxEntry.Parts(entry);
        return new OutboxCopy(
            id, line, priority, score >= 0 ? score : NotBefore(packed), (int)Math.Max(0, -score), packed);
    }

    private static long NotBefore(byte[] packed)
    {
        try
        {
            return Millis.Until(RecordFormat.Unpack<Outbound>(packed).NotBefore);
        }
        catch (InvalidDataException)
        {
            return 0;
        }
    }

    private static IEnumerable<(byte[] First, byte[] Second)> Pairs(RedisResult result) =>
        ((RedisValue[])result!).Chunk(2).Select(pair => ((byte[])pair[0]!, (byte[])pair[1]!));

    private static long? Moment(RedisResult score) => score.IsNull ? null : Whole((byte[])score!);

    private static long Whole(byte[] score) => (long)double.Parse(score, CultureInfo.InvariantCulture);
}
