namespace HeapText.Dialog;

/// <summary>A fault in a dialogs file, where it stands and what is wrong.</summary>
/// <param name="File">Path of the file, as it was opened.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
/// <param name="Message">What is wrong, and what would be right.</param>
public sealed record DialogFault(string File, int Line, int Column, string Message)
{
    public override string ToString() => $"{File}:{Line}:{Column}: {Message}";
}
