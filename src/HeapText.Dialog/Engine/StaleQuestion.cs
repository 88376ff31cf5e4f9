using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;
using NodaTime;

namespace HeapText.Dialog.Engine;

/// <summary>A question so long ago that a bare "2" or "yes" may answer something else.</summary>
internal static class StaleQuestion
{
    private static readonly Duration GoesStaleAfter = Duration.FromDays(1);

    /// <summary>True when the open question was asked a day ago or more and the text means something only as its
    /// answer. What is to be texted when a thing is done, such as brought, stays open as long as it takes.</summary>
    public static bool IsMetBy(Talk talk, Reading reading) =>
        talk.Farmer.AskedAt is { } asked && talk.Now - asked >= GoesStaleAfter
        && talk.Farmer.Stage is not (Stage.Tending or Stage.Building or Stage.Gathering)
        && MeansNothingAlone(reading);

    /// <summary>Asks the open question again, saying why.</summary>
    public static void AskAnew(Talk talk)
    {
        talk.Lead(Catalogue.AskedLongAgo);
        OpenQuestion.AskAgain(talk);
    }

    /// <summary>True when a text means something only as the answer to a question.</summary>
    public static bool MeansNothingAlone(Reading reading) => reading.Check.IsEmpty && reading.Also.Count == 0
        && (reading.Intent is Intent.Yes or Intent.No
            || (reading.Intent == Intent.Unknown && reading.BareNumber is not null));
}
