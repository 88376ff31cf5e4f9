namespace HeapText.Carriers.Smpp;

/// <summary>Which parts of texts that are to be tried again the centre took already, so that a farmer does not get
/// them twice.</summary>
/// <remarks>Kept in memory, for the last 10,000 texts that failed: a restart sends such a text whole again, under the
/// same id.</remarks>
internal sealed class SentParts
{
    private const int MostKept = 10_000;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, LinkedListNode<SentText>> _texts = new(StringComparer.Ordinal);
    private readonly LinkedList<SentText> _byAge = [];

    /// <summary>What is known of a text of so many parts.</summary>
    public SentText Of(string id, int parts)
    {
        lock (_lock)
        {
            return _texts.TryGetValue(id, out var known) && known.Value.Parts == parts
                ? known.Value
                : new SentText(id, parts);
        }
    }

    /// <summary>The text will be tried again.</summary>
    public void Keep(SentText text)
    {
        lock (_lock)
        {
            if (_texts.Remove(text.Id, out var before)) _byAge.Remove(before);
            _texts[text.Id] = _byAge.AddLast(text);
            if (_texts.Count <= MostKept) return;
            _texts.Remove(_byAge.First!.Value.Id);
            _byAge.RemoveFirst();
        }
    }

    /// <summary>The text is over.</summary>
    public void Forget(string id)
    {
        lock (_lock)
        {
            if (_texts.Remove(id, out var known)) _byAge.Remove(known);
        }
    }
}

/// <summary>The parts of one text that the centre took, with what it calls them.</summary>
internal sealed class SentText(string id, int parts)
{
    private readonly string?[] _references = new string?[parts];

    public string Id => id;

    public int Parts => parts;

    public bool Has(int part) => Volatile.Read(ref _references[part]) is not null;

    /// <summary>The centre took a part, and calls it so.</summary>
    public void Took(int part, string reference) => Volatile.Write(ref _references[part], reference);

    /// <summary>What the centre calls each part; of those not taken nothing.</summary>
    public IReadOnlyList<string> References => [.. _references.OfType<string>()];
}
