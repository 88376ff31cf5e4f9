using System.Text;

namespace HeapText.Dialog.Tests.Replies;

/// <summary>Texts that no farmer means to send: random bytes, and lines with letters struck out, put in and
/// swapped.</summary>
internal static class Spoilt
{
    private const int LongestRandom = 160, MostSlips = 6;

    internal static IEnumerable<string> RandomTexts(int number)
    {
        var random = new Random(1);
        return Enumerable.Range(0, number).Select(_ => RandomBytes(random));
    }

    internal static IEnumerable<(string Language, string Text)> Lines(
        IReadOnlyList<(string Language, string Text)> lines, int number)
    {
        var random = new Random(1);
        return Enumerable.Range(0, number).Select(i => lines[i % lines.Count])
            .Select(line => (line.Language, Spoil(line.Text, random)));
    }

    private static string RandomBytes(Random random)
    {
        var bytes = new byte[random.Next(LongestRandom)];
        random.NextBytes(bytes);
        return Encoding.UTF8.GetString(bytes);
    }

    private static string Spoil(string line, Random random)
    {
        var text = new StringBuilder(line);
        for (var slips = random.Next(1, MostSlips + 1); slips > 0 && text.Length > 1; slips--)
        {
            var at = random.Next(text.Length - 1);
            switch (random.Next(4))
            {
                case 0: text.Remove(at, 1); break;
                case 1: text.Insert(at, (char)random.Next(' ', 'z')); break;
                case 2: text[at] = (char)random.Next('a', 'z' + 1); break;
                case 3: (text[at], text[at + 1]) = (text[at + 1], text[at]); break;
            }
        }

        return text.ToString();
    }
}
