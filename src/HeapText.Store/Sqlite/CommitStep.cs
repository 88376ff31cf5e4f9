using HeapText.Dialog.Ports;
using HeapText.Store.Numbers;
using HeapText.Store.Records;

namespace HeapText.Store.Sqlite;

/// <summary>The whole effect of one turn, packed and sealed by the caller so that the writer only writes.</summary>
internal sealed class CommitStep(Commit commit, NumberVault vault)
{
    private readonly byte[] _key = Convert.FromHexString(commit.Key.Hash);
    private readonly byte[] _number = vault.Seal(commit.Key, commit.Number);
    private readonly byte[] _record = RecordFormat.Pack(commit.Farmer);
    private readonly byte[] _mark = commit.Seen is { } seen ? vault.MarkOf(seen) : [];
    private readonly long _oldestMark = Millis.Until(commit.At - SeenId.Kept);
    private readonly byte[]? _answer = commit.Answer is { } screen ? RecordFormat.Pack(screen) : null;
    private readonly object? _due = commit.NextDue is { } due ? Millis.Until(due) : null;
    private readonly object? _group = commit.Farmer.Group;
    private readonly object? _concern = commit.Farmer.Concern is { } concern ? Millis.Until(concern.Since) : null;
    private readonly byte[][] _messages = [.. commit.Send.Select(RecordFormat.Pack)];

    public CommitOutcome Run(Session session)
    {
        var (id, version, seen) = Present(session);
        if (seen) return CommitOutcome.Duplicate;
        if (version != commit.ExpectedVersion) return CommitOutcome.Conflict;
        var farmer = Write(session, id);
        if (_mark.Length > 0)
        {
            session.Run(Tables.Seen.Put, farmer, _mark, Millis.Now(commit.At));
            if (_mark[0] % Tables.Seen.TrimEvery == 0) session.Run(Tables.Seen.Trim, _oldestMark);
        }
        if (_answer is not null)
        {
            session.Run(Tables.Answers.Put, farmer, _mark, Millis.Now(commit.At), _answer);
            session.Run(Tables.Answers.Trim, Millis.Until(commit.At - Screen.Kept));
        }
        if (_messages.Length > 0) Send(session, farmer);
        return CommitOutcome.Committed;
    }

    private (long? Id, long Version, bool Seen) Present(Session session)
    {
        using var rows = session.Rows(Tables.Farmers.Check, _key, _mark, _oldestMark);
        return rows.Read() ? (rows.GetInt64(0), rows.GetInt64(1), rows.GetBoolean(2)) : (null, 0, false);
    }

    private long Write(Session session, long? id)
    {
        if (id is not { } known)
            return (long)session.Scalar(Tables.Farmers.Add, _number, _record, _due, _group, _concern, _key)!;
        session.Run(Tables.Farmers.Change, _number, _record, _due, _group, _concern, known);
        return known;
    }

    private void Send(Session session, long farmer)
    {
        var first = FirstToSend(session, farmer);
        for (var i = 0; i < _messages.Length; i++)
        {
            var message = commit.Send[i];
            var notBefore = Millis.Until(message.NotBefore);
            session.Run(
                Tables.Outbox.Add, farmer, message.Id, message.Line, (int)message.Priority, notBefore,
                i == first ? notBefore : null, _messages[i]);
        }
    }

    /// <summary>Which of the new messages becomes the farmer's head; -1 when the present head stays.</summary>
    private int FirstToSend(Session session, long farmer)
    {
        var first = 0;
        for (var i = 1; i < commit.Send.Count; i++)
            if (commit.Send[i].NotBefore < commit.Send[first].NotBefore) first = i;
        long demoted;
        using (var head = session.Rows(Tables.Outbox.Head, farmer))
        {
            if (!head.Read()) return first;
            if (head.GetInt64(1) > 0 || head.GetInt64(2) <= Millis.Until(commit.Send[first].NotBefore)) return -1;
            demoted = head.GetInt64(0);
        }
        session.Run(Tables.Outbox.Demote, demoted);
        return first;
    }
}
