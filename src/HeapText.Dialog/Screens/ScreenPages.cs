using System.Globalization;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Text;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Screens;

/// <summary>Puts a view into pages, with the keys that lead on and back.</summary>
internal sealed class ScreenPages(Phrasebook book)
{
    /// <summary>Most units of the line of keys: it must leave room for the rest.</summary>
    private const int LongestKeysUnits = 40;

    /// <summary>The pages of what the screen shows, and whether the farmer can enter something on the last.</summary>
    public (IReadOnlyList<Page> Pages, bool Open) Of(Talk talk, ScreenTalk screen)
    {
        var texts = Texts(talk, screen);
        var open = screen.View != ScreenView.Question || (!screen.Ends && texts.Count > screen.Reading.Count);
        return (Pager.Pages(texts, (page, last) => Keys(talk, screen, page, last, open)), open);
    }

    /// <summary>The open question as a screen shows it; empty when none is open.</summary>
    /// <param name="talk">The turn; the question is asked again in it.</param>
    /// <param name="follows">True when what was said just before stands above it.</param>
    public static IReadOnlyList<string> Question(Talk talk, bool follows)
    {
        var before = talk.Says.Count;
        if (talk.Farmer.Stage == Stage.AskingConsent) OpenQuestion.AskAgain(talk);
        else if (talk.Farmer.Group is null) talk.Say(Catalogue.ScreenCode);
        else if (talk.Farmer.Stopped) talk.Say(Catalogue.ScreenStopped);
        else if (talk.Farmer.Stage == Stage.AwaitingTurn)
        {
            if (!follows) OpenQuestion.AskAgain(talk);
            talk.Say(Catalogue.ScreenTurned);
        }
        else if (OpenQuestion.IsOpen(talk)) OpenQuestion.AskAgain(talk);
        return [.. talk.Says.Skip(before).Select(message => message.Text)];
    }

    /// <summary>The languages in the order in which they are offered.</summary>
    public IReadOnlyList<string> Languages => [.. book.Languages];

    private IReadOnlyList<string> Texts(Talk talk, ScreenTalk screen)
    {
        var language = talk.Farmer.Language;
        if (screen.View == ScreenView.Languages)
            return [.. Languages.Select((one, i) => Numbered(i + 1, book.Say(one, Catalogue.LanguageName)))];
        if (ScreenMenu.Of(screen.View) is { } menu)
        {
            var labels = menu.Choices.Select((choice, i) =>
                choice.Label is { } label ? Numbered(i + 1, book.Say(language, label)) : "");
            var title = menu.Title is { } asked ? book.Say(language, asked) : "";
            // Nobody is asked to feel the heat unwarned; who has told the rod has read this.
            var care = screen.View == ScreenView.Heat && talk.Farmer.Rod is null
                ? book.Say(language, Catalogue.RodMetal)
                : "";
            return [.. screen.Reading, care, title, .. labels];
        }

        return screen.Ends ? screen.Reading : [.. screen.Reading, .. Question(talk, screen.Reading.Count > 0)];
    }

    private string Keys(Talk talk, ScreenTalk screen, int page, bool last, bool open)
    {
        var back = page > 0 ? Key(talk, Catalogue.ScreenBack, ScreenKeys.Back)
            : last && !open ? ""
            : FirstPageBack(talk, screen.View);
        if (last) return open ? back : "";
        var more = Key(talk, Catalogue.ScreenMore, ScreenKeys.More);
        return back.Length == 0 ? more : $"{more}, {back}";
    }

    /// <summary>Where back leads from the first page.</summary>
    private string FirstPageBack(Talk talk, ScreenView view)
    {
        var farmer = talk.Farmer;
        if (view == ScreenView.Question && farmer.Group is null) return LanguagesKey(talk);
        if (farmer.Stopped) return "";
        if (view == ScreenView.Question && !StockByRole.HasStepBack(farmer))
            return Key(talk, Catalogue.ScreenMenu, ScreenKeys.Back);
        return view == ScreenView.Menu && !OpenQuestion.IsOpen(talk)
            ? ""
            : Key(talk, Catalogue.ScreenBack, ScreenKeys.Back);
    }

    /// <summary>The names of the other languages, as many as fit, since who does not read this one knows
    /// them.</summary>
    private string LanguagesKey(Talk talk)
    {
        var line = "";
        var others = talk.LanguagesOfGroups.Concat(Languages).Distinct().Where(one => one != talk.Farmer.Language);
        foreach (var language in others)
        {
            var name = book.Say(language, Catalogue.LanguageName);
            var longer = line.Length == 0 ? $"{ScreenKeys.Back} {name}" : $"{line}, {name}";
            if (line.Length > 0 && Fit.Measure(longer).Units > LongestKeysUnits) break;
            line = longer;
        }

        return line;
    }

    private string Key(Talk talk, MessageSpec label, string key) =>
        book.Say(talk.Farmer.Language, label, ("key", new Value.Name(key)));

    private static string Numbered(int number, string label) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {label}");
}
