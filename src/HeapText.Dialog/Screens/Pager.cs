using System.Globalization;
using HeapText.Dialog.Text;

namespace HeapText.Dialog.Screens;

/// <summary>Shares texts out over screens: whole where they fit, else cut after a line, a sentence, a choice or at
/// least a word.</summary>
internal static class Pager
{
    /// <summary>A better place to cut is taken when it leaves at least this share of the screen used.</summary>
    private const double LeastUsed = 0.5;

    private const string SentenceEnds = ".?!\u1362\u1367";
    private const string ChoiceEnds = ",:;\u1363\u1364\u1365";

    /// <summary>The pages in order.</summary>
    /// <param name="texts">What to show; each begins a line.</param>
    /// <param name="keys">The line of keys of a page, by its place from 0 and whether it is the last.</param>
    public static IReadOnlyList<Page> Pages(IEnumerable<string> texts, Func<int, bool, string> keys)
    {
        var left = new LinkedList<Part>(
            texts.Select((text, place) => new Part(text.Trim(), place)).Where(part => part.Text.Length > 0));
        var pages = new List<Page>();
        while (true)
        {
            var whole = WithKeys(string.Join('\n', left.Select(part => part.Text)), keys(pages.Count, true));
            if (Fit.FitsScreen(whole))
            {
                pages.Add(new Page(whole, left.Last?.Value.Place ?? 0));
                return pages;
            }

            var line = keys(pages.Count, false);
            var (text, last) = Take(left, text => Fit.FitsScreen(WithKeys(text, line)));
            pages.Add(new Page(WithKeys(text, line), last));
        }
    }

    /// <summary>Takes as much as fits a page off the front.</summary>
    private static (string Text, int Last) Take(LinkedList<Part> left, Func<string, bool> fits)
    {
        var (page, last) = ("", 0);
        while (left.First is { Value: var next })
        {
            var longer = page.Length == 0 ? next.Text : $"{page}\n{next.Text}";
            if (!fits(longer))
            {
                // A text that fits a page of its own is not cut: a question stays with its choices.
                var cut = page.Length > 0 && fits(next.Text) ? 0 : Cut(longer, page.Length, fits);
                if (cut <= page.Length) break;
                left.First.Value = next with { Text = longer[cut..].TrimStart() };
                return (longer[..cut].TrimEnd(), next.Place);
            }

            (page, last) = (longer, next.Place);
            left.RemoveFirst();
        }

        return (page, last);
    }

    /// <summary>Where to cut a text that is too long. Below what stands on the page already it is cut after a sentence
    /// only, else not begun there.</summary>
    private static int Cut(string text, int from, Func<string, bool> fits)
    {
        var (word, choice, sentence) = (0, 0, 0);
        for (var at = text.IndexOfAny([' ', '\n'], from + 1); at > 0; at = text.IndexOfAny([' ', '\n'], at + 1))
        {
            if (!fits(text[..at])) break;
            word = at;
            if (ChoiceEnds.Contains(text[at - 1])) choice = at;
            if (text[at] == '\n' || SentenceEnds.Contains(text[at - 1])) sentence = at;
        }

        if (from > 0) return sentence > 0 ? sentence : from;
        if (word == 0) return CutWord(text, fits);
        return sentence >= word * LeastUsed ? sentence : choice >= word * LeastUsed ? choice : word;
    }

    /// <summary>A word longer than a page is cut, though never inside a letter.</summary>
    private static int CutWord(string text, Func<string, bool> fits)
    {
        var starts = StringInfo.ParseCombiningCharacters(text);
        var most = starts.LastOrDefault(start => start > 0 && fits(text[..start]));
        return most > 0 ? most : starts.Length > 1 ? starts[1] : text.Length;
    }

    private static string WithKeys(string text, string keys) => keys.Length == 0 ? text
        : text.Length == 0 ? keys
        : $"{text}\n{keys}";

    private sealed record Part(string Text, int Place);
}

/// <summary>One page of a screen.</summary>
/// <param name="Text">With its line of keys, and no longer than a screen.</param>
/// <param name="Last">Place, from 0, of the last text of which something stands on it.</param>
internal sealed record Page(string Text, int Last);
