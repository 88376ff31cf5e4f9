using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>A reader of a language made up for one test.</summary>
internal static class SmallLexicon
{
    public static Reader Reader(string sections)
    {
        var folder = Directory.CreateTempSubdirectory("heaptext-words").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "zz"));
            File.WriteAllText(Path.Combine(folder, "zz", "words.yml"), "language: zz\n" + sections);
            return new Reader(Lexicon.Load(folder).Lexicons);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
