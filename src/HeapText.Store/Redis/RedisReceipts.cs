using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;
using Microsoft.Extensions.Logging;
using NodaTime;
using StackExchange.Redis;

namespace HeapText.Store.Redis;

/// <summary>Receipts for sent messages.</summary>
/// <remarks>
/// A receipt tells the reference alone, so what it leads to lies in a slot by the reference, and the farmer's log in
/// the farmer's. Settling is therefore two steps: the log first, then the references; noting a receipt too: finding
/// the farmer, then the log. Where the second is lost, only a receipt is: the message shows as taken, without how it
/// ended, and nothing is sent twice for it.
/// </remarks>
internal sealed partial class RedisReceipts(IDatabase database, Keys keys, NumberVault vault, ILogger logger)
{
    private static readonly int[] Days = [1, 0, -1, -2, -3, -4];
    private static readonly long EarlyLifetime = (long)SentMessage.EarlyKept.TotalMilliseconds;

    /// <summary>Lets receipts find a message that was settled, and applies those that came before.</summary>
    public async Task Index(FarmerKey key, SentTrace trace, Instant at)
    {
        try
        {
            await Task.WhenAll(trace.Marks.Select((mark, part) => Index(key, trace.Entry.Tail, mark, part, at)));
        }
        catch (Exception e) when (e is RedisException or TimeoutException)
        {
            LogReferenceLost(logger, e);
        }
    }

    /// <summary>Applies a receipt, or keeps it for a send that is settled later.</summary>
    public async Task<NoteOutcome> Note(Receipt receipt, Instant now)
    {
        var mark = vault.MarkOf(receipt.Line, receipt.Reference);
        var today = DayOf(now);
        var found = await Script.Find.Run(
            database, [keys.EarlyReceipt(mark), .. Days.Select(day => keys.References(mark, today + day))],
            [mark, Early(receipt, now), receipt.State == DeliveryState.Delivered ? 1 : 0, EarlyLifetime]);
        if (found.IsNull) return NoteOutcome.Early;
        var entry = ReferenceEntry.From((byte[])found!);
        return await Apply(entry.Key, entry.Tail, entry.Part, receipt.State, receipt.At)
            ? NoteOutcome.Noted
            : NoteOutcome.Unchanged;
    }

    /// <summary>The log of a farmer, newest first.</summary>
    public async Task<IReadOnlyList<SentMessage>> Sent(FarmerKey key, Instant oldest)
    {
        var farmer = database.StringGetAsync(keys.Farmer(key));
        var log = await database.SortedSetRangeByScoreWithScoresAsync(
            keys.Sent(key), start: oldest.ToUnixTimeSeconds(), order: Order.Descending);
        if ((byte[]?)await farmer is not { } stored) return [];
        var subject = RecordFormat.Unpack<Farmer>(StoredFarmer.Record(stored)).Subject;
        return [.. log.Select(sent => Unpacked(sent).Whole(subject, (long)sent.Score))];
    }

    private async Task Index(FarmerKey key, string tail, byte[] mark, int part, Instant at)
    {
        var early = await Script.Refer.Run(
            database, [keys.References(mark, DayOf(at)), keys.EarlyReceipt(mark)],
            [mark, new ReferenceEntry(key, part, tail).Bytes(), (long)Keys.ReferenceLifetime.TotalMilliseconds]);
        if (early.IsNull) return;
        var fields = ((string)early!).Split(' ').Select(field => long.Parse(field, CultureInfo.InvariantCulture))
            .ToList();
        if (Instant.FromUnixTimeMilliseconds(fields[0]) < at - SentMessage.EarlyKept) return;
        await Apply(key, tail, part, (DeliveryState)fields[1], Instant.FromUnixTimeMilliseconds(fields[2]));
    }

    /// <summary>Puts the entry after a receipt in the place of the one before it, unless another receipt did meanwhile:
    /// then it begins again. False when it changes nothing.</summary>
    private async Task<bool> Apply(FarmerKey key, string tail, int part, DeliveryState state, Instant at)
    {
        var log = keys.Sent(key);
        while (true)
        {
            var sent = (await database.SortedSetRangeByRankWithScoresAsync(log)).FirstOrDefault(
                entry => Unpacked(entry).Tail == tail);
            if (sent == default) return false;
            var before = Unpacked(sent);
            var noted = before.Noting(part, state, at.ToUnixTimeSeconds() - (long)sent.Score);
            if (noted == before) return false;
            if ((int)await Script.Swap.Run(database, [log], [sent.Element, RecordFormat.Pack(noted)]) == 1)
                return true;
        }
    }

    private static SentEntry Unpacked(SortedSetEntry sent) => RecordFormat.Unpack<SentEntry>((byte[])sent.Element!);

    private static RedisValue Early(Receipt receipt, Instant now) => string.Create(
        CultureInfo.InvariantCulture, $"{Millis.Now(now)} {(int)receipt.State} {Millis.Now(receipt.At)}");

    private static long DayOf(Instant at) => Millis.Now(at) / NodaConstants.MillisecondsPerDay;

    [LoggerMessage(4004, LogLevel.Warning, "A message was sent, but receipts for it will not be found")]
    private static partial void LogReferenceLost(ILogger logger, Exception fault);
}
