using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Engine;

/// <summary>Reads an answer given in the words of the open question's choices as if its number had been sent.</summary>
internal sealed class ChoiceWords(AnswerReader answers)
{
    /// <summary>The answer as a reading; null when the text as a whole is none of the choices' words.</summary>
    public Reading? Read(Stage stage, string text, string language)
    {
        if (QuestionOf(stage) is not { } question) return null;
        if (answers.Read(question, text, language) is not { } answer) return null;
        return (stage, answer) switch
        {
            (Stage.Building, "yes") => Meant(Intent.Built),
            (Stage.Building, "no") => Meant(Intent.No),
            (Stage.AwaitingTurn, "yes") => Meant(Intent.Turned),
            (Stage.AwaitingTurn, "no") => Meant(Intent.Delay),
            (Stage.PickingMaterial or Stage.AskingAmount, _) => Number(0),
            (Stage.AskingSprouts, "none") => Number(0),
            (Stage.AskingSprouts, _) => Meant(Intent.No),
            _ => Number(AnswerReader.Known[question].ToList().IndexOf(answer) + 1),
        };
    }

    /// <summary>What is said at any time and is no answer: thanks, a greeting, a wish to change hour or rod; else
    /// null.</summary>
    public string? Talk(string text, string language) => answers.Read("talk", text, language);

    /// <summary>The crop that a text names; null when it names none.</summary>
    public string? CropIn(string text, string language) => answers.FindIn("crop", text, language);

    private static Reading Meant(Intent intent) => new() { Intent = intent };

    private static Reading Number(int number) => new() { Intent = Intent.Unknown, BareNumber = number };

    private static string? QuestionOf(Stage stage) => stage switch
    {
        Stage.AskingHeat or Stage.AskingReheat => "heat",
        Stage.AskingSmell => "smell",
        Stage.AskingMoisture => "moisture",
        Stage.AskingRod => "rod",
        Stage.AskingHour => "hour",
        Stage.Building or Stage.AskingBuilt => "built",
        Stage.AwaitingTurn or Stage.AskingTurned => "turned",
        Stage.PickingMaterial or Stage.AskingAmount => "have",
        Stage.AskingCrop => "crop",
        Stage.AskingSprouts => "sprouts",
        _ => null,
    };
}
