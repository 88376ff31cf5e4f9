using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>A reader of languages made up for one test.</summary>
internal static class SmallLexicon
{
    public static Reader Reader(string sections) => Reader(("zz", sections));

    public static Reader Reader(params (string Language, string Sections)[] languages)
    {
        var folder = Directory.CreateTempSubdirectory("heaptext-words").FullName;
        try
        {
            foreach (var (language, sections) in languages)
            {
                Directory.CreateDirectory(Path.Combine(folder, language));
                File.WriteAllText(
                    Path.Combine(folder, language, "words.yml"), $"language: {language}\n{sections}");
            }

            return new Reader(Lexicon.Load(folder).Lexicons);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
