using NodaTime;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>Joins the parts of long texts, and says which messages may be answered when.</summary>
/// <typeparam name="T">What the caller needs in order to answer a message.</typeparam>
/// <remarks>
/// A peer forgets a message that is answered well, and this memory does not outlive the process. So a part is never
/// answered well before its whole text is durable:
/// <list type="number">
/// <item><see cref="Add"/> holds the part's token, until the text is whole and is given out.</item>
/// <item>The caller makes the text durable, then calls <see cref="Settle"/>, and answers the tokens it returns: OK when
/// durable, else a temporary error.</item>
/// <item><see cref="Sweep"/> gives up tokens held too long, to be answered with a temporary error: the peer keeps the
/// message and sends it again, while the part stays here, so that the text becomes whole as soon as the last part
/// comes. A part that then comes again is answered OK at once.</item>
/// <item>A text still not whole after the longer limit is given out as incomplete. It is made durable like any other,
/// so that no word of a farmer is lost even where the peer never sends again; but the caller must not act on it: half a
/// list of materials would make a wrong heap. A part that comes later still makes the whole, which is then given
/// out.</item>
/// </list>
/// A part number that comes with other contents is a new text under the same reference; the older is given out as
/// incomplete at the next sweep. When there is no room the oldest text is dropped and its tokens given up: the peer has
/// all of it that was not answered. May be called from several threads.
/// </remarks>
internal sealed class PartsCollector<T>(PartsLimits limits, Alphabet whenDefault)
{
    // A part has at most 140 octets on the radio, which are 160 septets; a longer message is none.
    private const int LongestPart = 254;

    private readonly Lock _lock = new();
    private readonly Dictionary<LongTextKey, LongText<T>> _texts = [];
    private readonly List<LongText<T>> _replaced = [];
    private readonly List<T> _sendAgain = [];
    private int _partCount;

    /// <summary>Takes a message in.</summary>
    /// <param name="body">A deliver_sm that is no receipt.</param>
    /// <param name="token">By which it is answered.</param>
    /// <param name="now">The moment.</param>
    public Collected<T> Add(MessageBody body, T token, Instant now)
    {
        var data = UserData.Of(body, whenDefault);
        if (data.Part is not { } part || data.Octets.Length > LongestPart)
        {
            return new Collected<T>.Given(
                new GivenText<T>(body.Source, body.Destination, data.Text, true, null) { Single = [token] });
        }

        lock (_lock)
        {
            var key = new LongTextKey(body.Source, body.Destination, part.Kind, part.Reference, part.Total);
            if (TextFor(key, part.Number, data, now) is not { } text) return new Collected<T>.NoRoom();
            return Keep(text, part.Number, data, token, now);
        }
    }

    /// <summary>Ends what was begun by giving a text out.</summary>
    /// <param name="given">The text.</param>
    /// <param name="isDurable">True when it was kept; false when it was not, so that it is given out once more when a
    /// part comes again, or at a sweep.</param>
    /// <param name="now">The moment.</param>
    /// <returns>The messages to answer: with OK when it is durable, else with a temporary error.</returns>
    public IReadOnlyList<T> Settle(GivenText<T> given, bool isDurable, Instant now)
    {
        if (given.Long is not { } text) return given.Single;
        lock (_lock)
        {
            // A part may have come since.
            var isAllOfIt = given.Numbers.Count == text.PartCount;
            text.State = isDurable && isAllOfIt ? LongTextState.Done : LongTextState.Collecting;
            if (isDurable) text.Since = now;
            var tokens = text.Release(given.Numbers);
            if (isDurable && _replaced.Contains(text)) Forget(text);
            return tokens;
        }
    }

    /// <summary>Looks for what is overdue. Call it about once a second.</summary>
    public Swept<T> Sweep(Instant now)
    {
        lock (_lock)
        {
            var due = new List<GivenText<T>>();
            foreach (var text in All.ToList())
            {
                var isOld = text.Since + limits.Keep <= now;
                if (text.State == LongTextState.Done && isOld) Forget(text);
                if (text.State != LongTextState.Collecting) continue;
                if (isOld || text.IsWhole || _replaced.Contains(text)) due.Add(GiveOut(text));
                else _sendAgain.AddRange(text.Release(now - limits.Hold));
            }

            var swept = new Swept<T>([.. _sendAgain], due);
            _sendAgain.Clear();
            return swept;
        }
    }

    private IEnumerable<LongText<T>> All => _texts.Values.Concat(_replaced);

    // The text a part belongs to, with room for the part; null when there is none to be had.
    private LongText<T>? TextFor(LongTextKey key, byte number, UserData data, Instant now)
    {
        var text = _texts.GetValueOrDefault(key);
        var kept = text?.Find(number);
        if (text is not null && kept is not null)
        {
            if (kept.IsSame(data)) return text;
            Replace(text);
            text = null;
        }

        if (text is null && !HasRoomForText(key.From)) return null;
        if (_partCount >= limits.MostParts && !DropOldest(one => one != text)) return null;
        return text ?? (_texts[key] = new LongText<T>(key, now));
    }

    private Collected<T> Keep(LongText<T> text, byte number, UserData data, T token, Instant now)
    {
        if (text.Find(number) is null)
        {
            text.Add(number, data);
            _partCount++;
            if (text.State == LongTextState.Done) (text.State, text.Since) = (LongTextState.Collecting, now);
        }
        else if (text.State == LongTextState.Done)
        {
            return new Collected<T>.Known();
        }

        text.Hold(number, token, now);
        return text.IsWhole && text.State == LongTextState.Collecting
            ? new Collected<T>.Given(GiveOut(text))
            : new Collected<T>.Held();
    }

    private static GivenText<T> GiveOut(LongText<T> text)
    {
        var (key, numbers) = (text.Key, text.Numbers);
        text.State = LongTextState.GivenOut;
        return new GivenText<T>(
            key.From, key.To, text.Text(), text.IsWhole, new PartOf(key.Kind, key.Reference, key.Total, numbers[0]))
        {
            Long = text,
            Numbers = numbers,
        };
    }

    private void Replace(LongText<T> text)
    {
        if (text.State == LongTextState.Done)
        {
            Forget(text);
            return;
        }

        _texts.Remove(text.Key);
        _replaced.Add(text);
    }

    private bool HasRoomForText(Address from)
    {
        if (All.Count(one => one.Key.From == from) >= limits.MostTextsOfSender
            && !DropOldest(one => one.Key.From == from)) return false;
        return _texts.Count + _replaced.Count < limits.MostTexts || DropOldest(_ => true);
    }

    // Done texts go first. One that is given out cannot be dropped: its caller is at work on it.
    private bool DropOldest(Func<LongText<T>, bool> isCandidate)
    {
        var oldest = All.Where(one => one.State != LongTextState.GivenOut && isCandidate(one))
            .OrderByDescending(one => one.State == LongTextState.Done).ThenBy(one => one.Since).FirstOrDefault();
        if (oldest is null) return false;
        _sendAgain.AddRange(oldest.Release(oldest.Numbers));
        Forget(oldest);
        return true;
    }

    private void Forget(LongText<T> text)
    {
        if (!_replaced.Remove(text)) _texts.Remove(text.Key);
        _partCount -= text.PartCount;
    }
}
