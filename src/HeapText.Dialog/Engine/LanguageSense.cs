using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Engine;

/// <summary>Tells which language a short text is in: the only one in whose words it can be read.</summary>
public sealed class LanguageSense(IReadOnlyDictionary<string, Reader> readerOfLanguage)
{
    /// <summary>The language; null when several or none can read it.</summary>
    public string? Of(string text)
    {
        var able = readerOfLanguage.Where(r => r.Value.Read(text, r.Key).Intent != Intent.Unknown).Take(2).ToList();
        return able is [var only] ? only.Key : null;
    }
}
