using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Store.Sqlite;

/// <summary>The log of sent messages, and the receipts for them.</summary>
internal static class ReceiptSteps
{
    /// <summary>Logs a sent message, with the receipts that came before.</summary>
    public static void Log(Session session, long farmer, SentTrace trace, Instant at)
    {
        var entry = trace.Entry;
        for (var part = 0; part < trace.Marks.Count; part++)
        {
            session.Run(
                Tables.References.Put, trace.Marks[part], farmer, entry.Tail, part, Millis.Now(at));
            session.Run(Tables.References.Trim, Millis.Until(at - SentMessage.ReferencesKept));
            if (Early(session, trace.Marks[part], at) is not { } early) continue;
            entry = entry.Noting(part, early.State, early.At.ToUnixTimeSeconds() - trace.At);
        }
        session.Run(Tables.Sent.Put, farmer, entry.Tail, trace.At, RecordFormat.Pack(entry));
        session.Run(Tables.Sent.TrimFarmer, farmer, SentMessage.KeptOfFarmer);
        session.Run(Tables.Sent.Trim, (at - SentMessage.Kept).ToUnixTimeSeconds());
    }

    /// <summary>Applies a receipt, or keeps it for a send that is settled later.</summary>
    public static NoteOutcome Note(Session session, byte[] mark, Receipt receipt, Instant now)
    {
        long farmer;
        string tail;
        int part;
        using (var row = session.Rows(Tables.References.Get, mark, Millis.Until(now - SentMessage.ReferencesKept)))
        {
            if (!row.Read())
            {
                Keep(session, mark, receipt, now);
                return NoteOutcome.Early;
            }
            (farmer, tail, part) = (row.GetInt64(0), row.GetString(1), row.GetInt32(2));
        }
        return Apply(session, farmer, tail, part, receipt) ? NoteOutcome.Noted : NoteOutcome.Unchanged;
    }

    /// <summary>The log of a farmer, newest first.</summary>
    public static List<SentMessage> Sent(Session session, FarmerKey key, Instant oldest)
    {
        var sent = new List<SentMessage>();
        using var rows = session.Rows(
            Tables.Sent.OfFarmer, Convert.FromHexString(key.Hash), oldest.ToUnixTimeSeconds());
        string? subject = null;
        while (rows.Read())
        {
            subject ??= RecordFormat.Unpack<Farmer>(rows.GetFieldValue<byte[]>(1)).Subject;
            sent.Add(RecordFormat.Unpack<SentEntry>(rows.GetFieldValue<byte[]>(0)).Whole(subject, rows.GetInt64(2)));
        }
        return sent;
    }

    private static bool Apply(Session session, long farmer, string tail, int part, Receipt receipt)
    {
        SentEntry entry, noted;
        using (var row = session.Rows(Tables.Sent.Get, farmer, tail))
        {
            if (!row.Read()) return false;
            entry = RecordFormat.Unpack<SentEntry>(row.GetFieldValue<byte[]>(0));
            noted = entry.Noting(part, receipt.State, receipt.At.ToUnixTimeSeconds() - row.GetInt64(1));
        }
        if (noted == entry) return false;
        session.Run(Tables.Sent.Change, farmer, tail, RecordFormat.Pack(noted));
        return true;
    }

    private static void Keep(Session session, byte[] mark, Receipt receipt, Instant now)
    {
        session.Run(
            Tables.EarlyReceipts.Put, mark, (int)receipt.State, Millis.Now(receipt.At), Millis.Now(now),
            receipt.State == DeliveryState.Delivered);
        session.Run(Tables.EarlyReceipts.Trim, Millis.Until(now - SentMessage.EarlyKept));
    }

    private static (DeliveryState State, Instant At)? Early(Session session, byte[] mark, Instant at)
    {
        using var row = session.Rows(Tables.EarlyReceipts.Get, mark, Millis.Until(at - SentMessage.EarlyKept));
        return row.Read()
            ? ((DeliveryState)row.GetInt32(0), Instant.FromUnixTimeMilliseconds(row.GetInt64(1)))
            : null;
    }
}
