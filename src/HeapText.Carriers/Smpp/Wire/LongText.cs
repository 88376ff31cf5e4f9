using System.Text;
using NodaTime;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>The parts of one long text, as far as they came.</summary>
internal sealed class LongText<T>(LongTextKey key, Instant firstAt)
{
    private readonly SortedDictionary<byte, (UserData Data, List<(T Token, Instant Since)> Waiting)> _parts = [];

    public LongTextKey Key => key;

    /// <summary>When its first part came, or when it was done.</summary>
    public Instant Since { get; set; } = firstAt;

    public LongTextState State { get; set; }

    public int PartCount => _parts.Count;

    public bool IsWhole => _parts.Count == key.Total;

    /// <summary>The numbers of the parts that came.</summary>
    public IReadOnlyList<byte> Numbers => [.. _parts.Keys];

    /// <summary>The octets kept of a part; null when it did not come.</summary>
    public UserData? Find(byte number) => _parts.TryGetValue(number, out var part) ? part.Data : null;

    public void Add(byte number, UserData data) => _parts.Add(number, (data, []));

    public void Hold(byte number, T token, Instant now) => _parts[number].Waiting.Add((token, now));

    /// <summary>Gives up the tokens that were held since a moment or longer.</summary>
    public List<T> Release(Instant heldSince) => Release(_parts.Keys, heldSince);

    /// <summary>Gives up all tokens of some parts.</summary>
    public List<T> Release(IEnumerable<byte> numbers) => Release(numbers, Instant.MaxValue);

    /// <summary>The words, with a <c>…</c> for each gap. Parts of one coding are joined before they are decoded, since
    /// phones cut pairs and escapes in two.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        var run = new List<byte>();
        UserData? last = null;
        for (var number = 1; number <= key.Total; number++)
        {
            var data = Find((byte)number);
            if (last is not null && (data is null || !last.IsSameCoding(data))) text.Append(Joined(last, run));
            if (data is null && (last is not null || number == 1)) text.Append('…');
            if (data is not null) run.AddRange(data.Octets.Span);
            last = data;
        }

        return last is null ? text.ToString() : text.Append(Joined(last, run)).ToString();
    }

    private static string Joined(UserData coding, List<byte> run)
    {
        var text = (coding with { Octets = run.ToArray() }).Text;
        run.Clear();
        return text;
    }

    private List<T> Release(IEnumerable<byte> numbers, Instant heldSince)
    {
        var released = new List<T>();
        foreach (var number in numbers)
        {
            var waiting = _parts[number].Waiting;
            released.AddRange(waiting.Where(one => one.Since <= heldSince).Select(one => one.Token));
            waiting.RemoveAll(one => one.Since <= heldSince);
        }

        return released;
    }
}

/// <summary>What tells one long text from another.</summary>
internal readonly record struct LongTextKey(
    Address From, Address To, PartKind Kind, ushort Reference, byte Total);

/// <summary>How far a long text has come.</summary>
internal enum LongTextState
{
    /// <summary>Parts are missing, or it could not be kept when it was given out.</summary>
    Collecting,

    /// <summary>Given out; not yet settled.</summary>
    GivenOut,

    /// <summary>It is durable.</summary>
    Done,
}
