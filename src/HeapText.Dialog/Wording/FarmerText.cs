namespace HeapText.Dialog.Wording;

/// <summary>A text of a text.yml that a farmer can see, and where it stands.</summary>
/// <param name="Section">The part of the file.</param>
/// <param name="Key">Its key in that part.</param>
/// <param name="Text">The words, placeholders in braces.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public sealed record FarmerText(string Section, string Key, string Text, int Line, int Column)
{
    /// <summary>True of texts that are whole sentences; the others are names and pieces.</summary>
    public bool IsSentence => Section is "messages" or "causes" or "actions";
}
