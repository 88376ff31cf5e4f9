using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>The reader with the words that are shipped.</summary>
internal static class TestReader
{
    public static LexiconLoad Shipped { get; } = Lexicon.Load(Path.Combine(AppContext.BaseDirectory, "dialogs"));

    public static Reader Sut { get; } = new(Shipped.Lexicons);
}
