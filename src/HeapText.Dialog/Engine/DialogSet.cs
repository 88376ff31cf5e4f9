using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Everything under dialogs/, read: the words to say and the words to understand.</summary>
public sealed record DialogSet(Phrasebook Book, Reader Reader, LanguageSense LanguageSense);
