namespace HeapText.Dialog.Replies;

/// <summary>Something wrong in a words.yml.</summary>
/// <param name="File">The file as it was opened.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Message">What is wrong and how to put it right.</param>
public sealed record LexiconFault(string File, int Line, int Column, string Message)
{
    /// <inheritdoc/>
    public override string ToString() => $"{File}:{Line}:{Column}: {Message}";
}
