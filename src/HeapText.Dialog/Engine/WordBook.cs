using System.Collections.Frozen;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Engine;

/// <summary>The own words of all districts, held for the conversation to read by; exchanged as a whole when one is
/// explained. Safe to share between threads.</summary>
public sealed class WordBook(Reader basic)
{
    /// <summary>Reads what is the same in all districts.</summary>
    public Reader Basic => basic;

    private volatile FrozenDictionary<string, District> _districts = FrozenDictionary<string, District>.Empty;

    /// <summary>Takes these in place of all before.</summary>
    public void Set(IEnumerable<OwnWord> words) => _districts = words.GroupBy(word => word.District)
        .ToFrozenDictionary(own => own.Key, own => new District(basic.With(own), own.ToFrozenDictionary(w => w.Word)));

    /// <summary>Reads texts of a district's farmers.</summary>
    internal Reader ReaderOf(string district) => _districts.GetValueOrDefault(district)?.Reader ?? basic;

    /// <summary>What a word means in a district; null when nobody has explained it.</summary>
    public OwnWord? Find(string district, string word) =>
        _districts.GetValueOrDefault(district)?.Words.GetValueOrDefault(word);

    private sealed record District(Reader Reader, FrozenDictionary<string, OwnWord> Words);
}
