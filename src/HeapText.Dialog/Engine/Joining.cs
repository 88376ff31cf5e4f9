using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>A number that has not joined: how to join, the group's code, consent.</summary>
internal static class Joining
{
    /// <summary>A number that has not joined gets at most one answer in this time.</summary>
    private static readonly Duration BetweenAnswers = Duration.FromHours(1);

    /// <summary>The question of consent is asked again this often when the answer is not understood.</summary>
    private const int MostAsked = 2;

    /// <summary>Answers a number that has not joined.</summary>
    /// <param name="talk">The turn.</param>
    /// <param name="reading">What it wrote.</param>
    /// <param name="writtenIn">The language it wrote in; null when that cannot be told.</param>
    public static void Hear(Talk talk, Reading reading, string? writtenIn)
    {
        if (reading.Language is { } language && talk.Speaks(language))
            talk.Farmer = talk.Farmer with { Language = language, LanguageChosen = true };
        if (reading.GroupCode is { } code) Invite(talk, code, writtenIn);
        else if (talk.Farmer.Stage == Stage.AskingConsent) HearConsent(talk, reading, writtenIn);
        else if (reading.Intent != Intent.Stop) TurnAway(talk, writtenIn);
    }

    /// <summary>Answers a number that has not joined and rang: the question of consent, or how to join.</summary>
    public static void Ring(Talk talk)
    {
        if (talk.Farmer.Stage != Stage.AskingConsent) TurnAway(talk, null);
        else if (MayAnswer(talk)) AskConsent(talk);
    }

    /// <summary>Asks for consent again.</summary>
    public static void AskConsent(Talk talk)
    {
        talk.Say(Catalogue.AskConsent, ("group", new Value.Name(talk.Group?.Name ?? "")), ("officer", talk.Officer),
            ("languages", talk.OnScreen ? new Value.LanguageHints([]) : talk.LanguageHints));
    }

    private static void Invite(Talk talk, int code, string? writtenIn)
    {
        if (talk.GroupOf(code) is not { } group)
        {
            if (MayAnswer(talk)) talk.Say(Catalogue.NoSuchGroup, ("code", new Value.Number(code)));
            return;
        }
        talk.Farmer = talk.Farmer with
        {
            InvitedTo = code,
            Zone = group.Zone,
            Misreadings = 0,
        };
        TakeLanguage(talk, writtenIn, group.Language);
        talk.Ask(Cue.Invited);
        AskConsent(talk);
    }

    /// <summary>Writes on in the language that was asked for, else in that of the text, else in the usual
    /// one.</summary>
    private static void TakeLanguage(Talk talk, string? writtenIn, string usual)
    {
        if (talk.Farmer.LanguageChosen) return;
        var isSpoken = writtenIn is not null && talk.Speaks(writtenIn);
        talk.Farmer = talk.Farmer with { Language = isSpoken ? writtenIn! : usual };
    }

    private static void HearConsent(Talk talk, Reading reading, string? writtenIn)
    {
        if (reading.Intent == Intent.Language) AskConsent(talk);
        else if (StaleQuestion.IsMetBy(talk, reading)) StaleQuestion.AskAnew(talk);
        else if (reading.Intent == Intent.Yes || reading.BareNumber == 1) Agree(talk, writtenIn);
        else if (reading.Intent is Intent.No or Intent.Stop || reading.BareNumber is 2 or 0) Decline(talk);
        else if (talk.Farmer.Misreadings < MostAsked)
        {
            talk.Farmer = talk.Farmer with { Misreadings = talk.Farmer.Misreadings + 1 };
            OpenQuestion.AskAgain(talk);
        }
    }

    private static void Agree(Talk talk, string? writtenIn)
    {
        talk.Ask(Cue.Agreed);
        talk.Farmer = talk.Farmer with
        {
            Group = talk.Farmer.InvitedTo,
            InvitedTo = null,
            ConsentAt = talk.Now,
        };
        TakeLanguage(talk, writtenIn, talk.Farmer.Language);
        talk.Say(Catalogue.Welcome, ("group", new Value.Name(talk.Group?.Name ?? "")));
        Stocktaking.AskFreely(talk);
    }

    private static void Decline(Talk talk)
    {
        talk.Ask(Cue.Declined);
        talk.Say(Catalogue.ConsentRefused, ("code", new Value.Number(talk.Farmer.InvitedTo ?? 0)));
        talk.Farmer = talk.Farmer with { InvitedTo = null };
    }

    private static void TurnAway(Talk talk, string? writtenIn)
    {
        if (talk.OnScreen) talk.Say(Catalogue.ScreenCode);
        else if (MayAnswer(talk)) talk.SayToStranger(Catalogue.HowToJoin, writtenIn);
    }

    /// <summary>True when an hour has passed since the last such answer; notes this one. A dialled screen waits for
    /// its answer, and always gets one.</summary>
    public static bool MayAnswer(Talk talk)
    {
        if (talk.OnScreen) return true;
        if (talk.Farmer.LastTurnedAway is { } last && talk.Now - last < BetweenAnswers) return false;
        talk.Farmer = talk.Farmer with { LastTurnedAway = talk.Now };
        return true;
    }
}
