using System.Globalization;
using NodaTime;
using NodaTime.Extensions;

namespace HeapText.Carriers.Smpp;

/// <summary>Gives each deliver_sm an id, and the same id when the centre delivers it again.</summary>
/// <remarks>
/// A deliver_sm has no id of its own: only its contents, which a farmer may truly send twice in a minute, as in "1" and
/// "1" on two menus. Taking two messages for one leaves a farmer without an answer; taking one for two answers the next
/// question with the last answer. So what counts is what the centre can know. It delivers again only what was never
/// surely answered: an equal delivery is the same message when an earlier one
/// <list type="bullet">
/// <item>was answered with an error, or</item>
/// <item>was not answered yet when its connection ended, or its answer may have been lost with the connection: nothing
/// that the centre said since proves that it came, or</item>
/// <item>waits for its answer for so long that the centre's patience may be over,</item>
/// </list>
/// and each earlier one accounts for one later one. All else is a new message. This is remembered for an hour.
/// <para>What a stopped process knew is lost. Therefore the first of equal messages within ten minutes has an id that
/// the next process works out alike on the same machine: what is delivered again within those ten minutes is known by
/// the store. The price: a text that is truly repeated right after such a stop, in the same ten minutes, counts
/// once.</para>
/// </remarks>
internal sealed class Unsettled(string machine, TimeProvider time)
{
    /// <summary>How long a centre waits at least for an answer. Chosen: shorter than what centres are set to.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Kept = TimeSpan.FromHours(1);
    private static readonly Duration Bucket = Duration.FromMinutes(10);
    private const int MostKept = 20_000;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, List<Entry>> _open = new(StringComparer.Ordinal);
    private readonly Queue<(long At, string Print, Entry Entry)> _byAge = [];
    private readonly HashSet<string> _inBucket = new(StringComparer.Ordinal);
    private readonly long _epoch = time.GetUtcNow().ToUnixTimeMilliseconds();
    private long _bucket;
    private long _repeats;

    /// <summary>The id of a delivery.</summary>
    /// <param name="delivery">The delivery; null for a text whose deliveries were all answered with an error.</param>
    /// <param name="print">What tells its contents from others'.</param>
    public string Claim(Delivery? delivery, Fingerprint print)
    {
        lock (_lock)
        {
            var key = print.Of(machine);
            DropOld();
            if (!_open.TryGetValue(key, out var entries)) _open[key] = entries = [];
            entries.RemoveAll(entry => entry.Stand(delivery) == Standing.Settled);
            if (entries.Find(entry => entry.Stand(delivery) == Standing.ToComeAgain) is { } again)
            {
                again.Delivery = delivery ?? again.Delivery;
                return again.Id;
            }

            var added = new Entry(NewId(key)) { Delivery = delivery };
            entries.Add(added);
            _byAge.Enqueue((time.GetTimestamp(), key, added));
            return added.Id;
        }
    }

    private string NewId(string key)
    {
        var bucket = time.GetUtcNow().ToInstant().ToUnixTimeTicks() / (long)Bucket.TotalTicks;
        if (bucket != _bucket || _inBucket.Count >= MostKept) _inBucket.Clear();
        _bucket = bucket;
        return _inBucket.Add(key)
            ? string.Create(CultureInfo.InvariantCulture, $"{key}-{bucket}")
            : string.Create(CultureInfo.InvariantCulture, $"{key}-{_epoch}.{++_repeats}");
    }

    private void DropOld()
    {
        while (_byAge.TryPeek(out var oldest)
            && (_byAge.Count > MostKept || time.GetElapsedTime(oldest.At) > Kept))
        {
            _byAge.Dequeue();
            if (!_open.TryGetValue(oldest.Print, out var entries)) continue;
            entries.Remove(oldest.Entry);
            if (entries.Count == 0) _open.Remove(oldest.Print);
        }
    }

    private sealed class Entry(string id)
    {
        public string Id => id;

        public Delivery? Delivery { get; set; }

        public Standing Stand(Delivery? other) => Delivery?.Stand(other, Patience) ?? Standing.ToComeAgain;
    }
}
