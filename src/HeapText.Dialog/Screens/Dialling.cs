using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Ports;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Screens;

/// <summary>The conversation on a dialled screen: the same questions and answers, shown page by page, with a menu
/// beside them.</summary>
/// <remarks>
/// A session not met before shows where the farmer is, whatever was entered: nothing can answer a screen that was not
/// shown. A step that was left out is not waited for: the next entry answers the screen shown last. A step that comes
/// after a later one was taken changes nothing and is shown where the farmer is.
/// </remarks>
internal sealed class Dialling(Conversation conversation, Phrasebook book, AnswerReader answers)
{
    private readonly ScreenPages _pages = new(book);

    /// <summary>Takes a step; the farmer's record holds the session afterwards.</summary>
    public ScreenReaction Take(Talk talk, Dialled step)
    {
        var before = talk.Farmer;
        var session = IdOf(step.Session);
        var screen = before.Screen ?? new ScreenTalk { Session = session, Step = -1, At = talk.Now };
        var isKnown = before.Screen is not null && screen.Session == session;
        if (isKnown && step.Step <= screen.Step) return Overtaken(talk, screen);
        var shown = isKnown && screen.View != ScreenView.Closed ? Enter(talk, screen, step.Input) : Dial(talk, screen);
        return Show(talk, shown with { Session = session, Step = step.Step, At = talk.Now });
    }

    /// <summary>Where the farmer is, with nothing changed.</summary>
    private ScreenReaction Overtaken(Talk talk, ScreenTalk screen)
    {
        var farmer = talk.Farmer;
        var reaction = Show(talk, screen.View == ScreenView.Closed ? Dial(talk, screen) : screen);
        return reaction with { Farmer = farmer, Says = [], NextDue = conversation.NextDue(farmer, talk.Now) };
    }

    private ScreenReaction Show(Talk talk, ScreenTalk screen)
    {
        // The question may have been answered by a text since.
        if (screen is { View: ScreenView.Question, Reading.Count: 0 } && !IsAsked(talk)) screen = Home(talk, screen);
        var said = talk.Says.ToList();
        var (pages, open) = _pages.Of(talk, screen);
        IReadOnlyList<Outbound> says = [];
        if (pages.Count > 1 && screen.Page == 0 && Catalogue.Recipes.Any(talk.HasSaid))
        {
            says = [.. said.Where(message => screen.Reading.Contains(message.Text))];
            screen = screen with
            {
                Reading = [book.Say(talk.Farmer.Language, Catalogue.ScreenAlsoText), .. screen.Reading],
            };
            (pages, open) = _pages.Of(talk, screen);
        }

        var page = Math.Clamp(screen.Page, 0, pages.Count - 1);
        var ends = page == pages.Count - 1 && !open;
        screen = screen with
        {
            View = ends ? ScreenView.Closed : screen.View,
            Page = ends ? 0 : page,
            Reading = ends || pages.Count == 1 ? [] : screen.Reading,
            Ends = !ends && screen.Ends,
            Asked = talk.Farmer.Stage,
            AskedOf = talk.Farmer.TalkOf,
        };
        talk.Farmer = talk.Farmer with { Screen = screen };
        return new ScreenReaction(
            talk.Farmer, new Screen(pages[page].Text, !ends), says, conversation.NextDue(talk.Farmer, talk.Now));
    }

    /// <summary>What a new session shows: what was not read to its end, else the open question, else the
    /// menu.</summary>
    private static ScreenTalk Dial(Talk talk, ScreenTalk screen) =>
        screen.View == ScreenView.Question && screen.Reading.Count > 0 ? screen : Home(talk, screen);

    private static ScreenTalk Home(Talk talk, ScreenTalk screen) =>
        At(screen, IsAsked(talk) ? ScreenView.Question : ScreenView.Menu);

    private static bool IsAsked(Talk talk) => !IsMember(talk) || OpenQuestion.IsOpen(talk);

    private static ScreenTalk At(ScreenTalk screen, ScreenView view, int page = 0) =>
        screen with { View = view, Page = page, Reading = [], Ends = false };

    private ScreenTalk Enter(Talk talk, ScreenTalk screen, string input)
    {
        if (string.IsNullOrWhiteSpace(input)) return screen;
        switch (ScreenKeys.Read(input, talk.Farmer.Language, answers))
        {
            case ScreenMove.More: return screen with { Page = screen.Page + 1 };
            case ScreenMove.Back when screen.Page > 0: return screen with { Page = screen.Page - 1 };
            case ScreenMove.Back: return Back(talk, screen);
            case ScreenMove.Menu: return IsMember(talk) ? At(screen, ScreenView.Menu) : Home(talk, screen);
        }

        var number = WholeNumber(input) ?? (screen.View == ScreenView.Question ? null : PickIn(talk, screen, input));
        if (number is { } picked && screen.View == ScreenView.Languages) return PickLanguage(talk, screen, picked);
        if (number is { } n && ScreenMenu.Of(screen.View) is { } menu)
            return Pick(talk, screen, menu.Choices.ElementAtOrDefault(n - 1));
        if (number is not null && (IsStale(talk, screen) || !IsAsked(talk))) return Home(talk, screen);
        if (number is not null && PageOfQuestion(talk, screen) is var page && page > screen.Page)
            return screen with { Page = page };
        var before = talk.Says.Count;
        Answer(talk, input, number);
        return Answered(talk, screen, before);
    }

    /// <summary>The choice of a menu that is meant by what would mean something only as the answer to the question
    /// behind it; 0 for none that is offered, null when the entry says something of its own.</summary>
    private int? PickIn(Talk talk, ScreenTalk screen, string input)
    {
        var reading = conversation.Read(talk, input);
        if (!StaleQuestion.MeansNothingAlone(reading)) return null;
        return (screen.View, reading.Intent) switch
        {
            (ScreenView.Stop, Intent.Yes) => 1,
            (ScreenView.Stop, Intent.No) => 2,
            _ when reading is { BareNumber: > 0 and <= 99 and var n, BareMeasure: null } && n % 1 == 0 => (int)n,
            _ => 0,
        };
    }

    /// <summary>The first page on which the question can be answered by a number: not before it stands there, and
    /// consent not before all of it was read.</summary>
    private int PageOfQuestion(Talk talk, ScreenTalk screen) => talk.Farmer switch
    {
        { Stage: Stage.Stranger } => 0,
        { Stage: Stage.AskingConsent } => _pages.Of(talk, screen).Pages.Count - 1,
        _ when screen.Reading.Count == 0 => 0,
        _ => _pages.Of(talk, screen).Pages.TakeWhile(page => page.Last < screen.Reading.Count).Count(),
    };

    /// <summary>True when a question was asked since the screen was shown, by a text or a reminder.</summary>
    private static bool IsStale(Talk talk, ScreenTalk screen) =>
        talk.Farmer.Stage != screen.Asked || talk.Farmer.TalkOf != screen.AskedOf || talk.Farmer.AskedAt > screen.At;

    private static bool IsMember(Talk talk) => talk.Farmer is { Group: not null, Stopped: false };

    private static ScreenTalk Back(Talk talk, ScreenTalk screen)
    {
        if (screen.View == ScreenView.Question && talk.Farmer.Group is null) return At(screen, ScreenView.Languages);
        if (!IsMember(talk)) return Home(talk, screen);
        if (screen.View == ScreenView.Question)
            return At(screen, StockByRole.StepBack(talk) ? ScreenView.Question : ScreenView.Menu);
        if (screen.View == ScreenView.Languages) return At(screen, ScreenView.Settings);
        var parent = ScreenMenu.Of(screen.View)!.Parent;
        return parent == ScreenView.Question ? Home(talk, screen) : At(screen, parent);
    }

    private ScreenTalk PickLanguage(Talk talk, ScreenTalk screen, int number)
    {
        if (_pages.Languages.ElementAtOrDefault(number - 1) is not { } language) return PickAgain(talk, screen);
        if (IsMember(talk)) conversation.Take(talk, new Reading { Intent = Intent.Language, Language = language });
        else talk.Farmer = talk.Farmer with { Language = language, LanguageChosen = true };
        return IsMember(talk) ? Answered(talk, screen) : Home(talk, screen);
    }

    private ScreenTalk Pick(Talk talk, ScreenTalk screen, ScreenChoice? choice)
    {
        if (choice is null) return PickAgain(talk, screen);
        if (choice.Opens is { } view) return At(screen, view);
        if (choice.Begins == "stock") Stocktaking.BeginOrGoOn(talk);
        else if (choice.Begins is { } word) Conversation.Begin(talk, word);
        else conversation.Take(talk, choice.Means!);
        return Answered(talk, screen);
    }

    private ScreenTalk PickAgain(Talk talk, ScreenTalk screen) =>
        At(screen, screen.View) with { Reading = [book.Say(talk.Farmer.Language, Catalogue.ScreenPick)] };

    /// <summary>Gives the entry to the conversation; a number where the screen has choices of its own stands for their
    /// words.</summary>
    private void Answer(Talk talk, string input, int? number)
    {
        Intent? meant = (talk.Farmer, number) switch
        {
            ({ Group: null, Stage: Stage.Stranger }, > 0) => Intent.Start,
            ({ Stopped: true }, 1) => Intent.Start,
            ({ Stage: Stage.AwaitingTurn, Stopped: false }, 1) => Intent.Turned,
            ({ Stage: Stage.AwaitingTurn, Stopped: false }, 2) => Intent.Delay,
            _ => null,
        };
        if (meant is not { } intent) conversation.Hear(talk, input);
        else
            conversation.Take(talk, new Reading
            {
                Intent = intent,
                GroupCode = talk.Farmer.Group is null ? number : null,
            });
    }

    /// <summary>The screen after an answer: what was said, then the question that is open, if any.</summary>
    private static ScreenTalk Answered(Talk talk, ScreenTalk screen, int before = 0)
    {
        var said = talk.Says.Skip(before).Select(message => message.Text).ToList();
        var ends = talk.Farmer.Stopped || talk.HasSaid(Catalogue.Urgent) || talk.HasSaid(Catalogue.ConsentRefused);
        if (ends && said.Count > 0)
            return At(screen, ScreenView.Question) with { Reading = said, Ends = true };
        var question = ScreenPages.Question(talk, follows: said.Count > 0);
        if (said.Count == 0 && question.Count == 0) return Home(talk, screen);
        var isSaid = question.Count > 0 && said.TakeLast(question.Count).SequenceEqual(question);
        if (isSaid) said.RemoveRange(said.Count - question.Count, question.Count);
        return At(screen, ScreenView.Question) with { Reading = said };
    }

    private static int? WholeNumber(string input) =>
        int.TryParse(input.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static long IdOf(string session) =>
        BinaryPrimitives.ReadInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(session)));
}
