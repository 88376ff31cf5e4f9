using HeapText.Carriers.Smpp.Wire;

namespace HeapText.Carriers.Smpp;

/// <summary>Which session, and which step of it, a dialled entry belongs to.</summary>
/// <remarks>The number in its_session_info comes round again soon, and some centres send none: so a session is one
/// phone's, from the entry that opens it to the next such entry, or until ten minutes without any.</remarks>
internal sealed class ScreenSessions(TimeProvider time)
{
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);
    private const int MostKept = 10_000;
    private readonly Lock _lock = new();
    private readonly Dictionary<(string Phone, byte? Number), Talk> _talks = [];

    /// <summary>The session and step of an entry; the same delivery again is the same step. An entry of a session that
    /// is not known opens one.</summary>
    public (string Session, int Step) Step(MessageBody body, string delivery, bool opens)
    {
        lock (_lock)
        {
            var now = time.GetTimestamp();
            var key = (body.Source.Value, body.Tlvs.ItsSessionInfo?.Session);
            if (_talks.Count >= MostKept) Sweep();
            if (!_talks.TryGetValue(key, out var talk) || IsOver(talk)
                || (opens && talk.Session != delivery))
                talk = new Talk(delivery, 1, delivery, now);
            else if (talk.Delivery != delivery)
                talk = talk with { Step = talk.Step + 1, Delivery = delivery, At = now };
            _talks[key] = talk;
            return (talk.Session, talk.Step);
        }
    }

    /// <summary>The phone's session is over.</summary>
    public void End(MessageBody body)
    {
        lock (_lock) _talks.Remove((body.Source.Value, body.Tlvs.ItsSessionInfo?.Session));
    }

    private void Sweep()
    {
        foreach (var (key, _) in _talks.Where(one => IsOver(one.Value)).ToList()) _talks.Remove(key);
        if (_talks.Count >= MostKept) _talks.Clear();
    }

    private bool IsOver(Talk talk) => time.GetElapsedTime(talk.At) > Longest;

    private sealed record Talk(string Session, int Step, string Delivery, long At);
}
