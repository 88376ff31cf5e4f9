using System.Text;

namespace HeapText.Benchmarks.Reading;

/// <summary>Texts that no farmer means to send: random bytes, and lines with letters struck out, put in and
/// swapped.</summary>
internal static class Spoilt
{
    private const int RandomTexts = 10_000, SpoiltTexts = 100_000, LongestRandom = 160, MostSlips = 6;

    internal static IEnumerable<(string Kind, string Language, string Text)> Lines(
        IReadOnlyList<(string Kind, string Language, string Text)> lines)
    {
        var random = new Random(1);
        for (var i = 0; i < RandomTexts; i++)
            yield return ("random bytes", lines[i % lines.Count].Language, RandomBytes(random));
        for (var i = 0; i < SpoiltTexts; i++)
            yield return ("spoilt lines", lines[i % lines.Count].Language, Spoil(lines[i % lines.Count].Text, random));
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
