using System.Diagnostics;
using HeapText.Dialog.Ports;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Store.Sqlite;

/// <summary>A message as the outbox holds it.</summary>
internal readonly record struct Taken(long Seq, int Tries, byte[] Message, byte[] Key, byte[] Number);

/// <summary>Taking messages and settling them.</summary>
internal static class OutboxSteps
{
    /// <summary>Leases up to so many heads of a line, by priority, then by the moment they became ready.</summary>
    public static List<Taken> Take(
        Session session, string line, Priority through, long now, long until, int most)
    {
        var taken = new List<Taken>();
        for (var priority = Priority.Reply; priority <= through && taken.Count < most; priority++)
            ReadReady(session, line, priority, now, most - taken.Count, taken);
        foreach (var message in taken) session.Run(Tables.Outbox.Lease, message.Seq, until);
        return taken;
    }

    /// <summary>Ends a taken message. Only its latest taking may postpone it or give it up; that it was sent is
    /// believed of any.</summary>
    /// <param name="session">The writer's.</param>
    /// <param name="sending">The message.</param>
    /// <param name="settlement">How it ended.</param>
    /// <param name="at">When.</param>
    /// <param name="trace">What it leaves behind when it was sent.</param>
    public static bool Settle(
        Session session, Sending sending, Settlement settlement, Instant at, SentTrace? trace)
    {
        long seq, farmer;
        int tries;
        using (var row = session.Rows(
            Tables.Outbox.Taken, Convert.FromHexString(sending.Key.Hash), sending.Message.Id))
        {
            if (!row.Read()) return false;
            (seq, tries, farmer) = (row.GetInt64(0), row.GetInt32(1), row.GetInt64(2));
        }
        if (settlement is not Settlement.Sent && tries != sending.Attempt) return false;
        switch (settlement)
        {
            case Settlement.Sent:
                ReceiptSteps.Log(session, farmer, trace!, at);
                Remove(session, seq, farmer);
                break;
            case Settlement.Retry retry:
                session.Run(Tables.Outbox.Postpone, seq, Millis.Until(retry.At));
                break;
            case Settlement.PutBack back:
                session.Run(Tables.Outbox.PutBack, seq, Millis.Until(back.At));
                break;
            case Settlement.SetAside aside:
                var entry = new SetAsideEntry(sending.Key, at, aside.Reason, sending.Message);
                session.Run(Tables.SetAside.Add, farmer, RecordFormat.Pack(entry));
                session.Run(Tables.SetAside.Trim, Tables.SetAside.Kept);
                Remove(session, seq, farmer);
                break;
            default:
                throw new UnreachableException();
        }
        return true;
    }

    private static void ReadReady(
        Session session, string line, Priority priority, long now, int most, List<Taken> taken)
    {
        using var rows = session.Rows(Tables.Outbox.Ready, line, (int)priority, now, most);
        while (rows.Read())
            taken.Add(new Taken(
                rows.GetInt64(0), rows.GetInt32(1), rows.GetFieldValue<byte[]>(2), rows.GetFieldValue<byte[]>(3),
                rows.GetFieldValue<byte[]>(4)));
    }

    private static void Remove(Session session, long seq, long farmer)
    {
        session.Run(Tables.Outbox.Remove, seq);
        session.Run(Tables.Outbox.Promote, farmer);
    }
}
