using System.Text.RegularExpressions;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Tests.Engine;

public sealed partial class ChoiceWordsTests
{
    private static readonly (string Message, Stage Stage)[] Questions =
    [
        ("ask-heat", Stage.AskingHeat), ("ask-heat-was", Stage.AskingHeat), ("ask-reheat", Stage.AskingReheat),
        ("ask-smell", Stage.AskingSmell), ("ask-moisture", Stage.AskingMoisture), ("ask-rod", Stage.AskingRod),
        ("ask-turned", Stage.AskingTurned), ("ask-built", Stage.AskingBuilt),
    ];

    /// <summary>Every choice of every question, in the words of its message.</summary>
    public static TheoryData<string, Stage, string, int> Choices()
    {
        TheoryData<string, Stage, string, int> choices = [];
        foreach (var language in Repository.Dialogs.Book.Languages)
            foreach (var (message, stage) in Questions)
                foreach (Match choice in Choice().Matches(
                    Repository.Dialogs.Book.File(language).Messages[message].ToString()))
                    choices.Add(language, stage, choice.Groups[2].Value, int.Parse(choice.Groups[1].Value, null));
        return choices;
    }

    [Theory]
    [MemberData(nameof(Choices))]
    public void Choice_TextedInItsOwnWords_CountsAsItsNumber(string language, Stage stage, string words, int number)
    {
        var chosen = new ChoiceWords(Repository.Dialogs.Answers).Read(stage, words, language);
        var plain = Repository.Dialogs.Reader.Read(words, language);

        Assert.True(chosen?.BareNumber == number || IsYesOrNo(plain.Intent, number), words);
    }

    [Theory]
    [InlineData(Stage.AskingSmell, "soil", 1)]
    [InlineData(Stage.AskingSmell, "none", 5)]
    [InlineData(Stage.AskingMoisture, "drop", 3)]
    [InlineData(Stage.AskingMoisture, "too hot to squeeze", 5)]
    [InlineData(Stage.AskingRod, "iron rod", 2)]
    [InlineData(Stage.AskingHour, "7 am", 2)]
    [InlineData(Stage.AskingHour, "7", 2)]
    [InlineData(Stage.PickingMaterial, "none", 0)]
    [InlineData(Stage.AskingAmount, "none", 0)]
    public void Choice_InOtherWords_CountsAsItsNumber(Stage stage, string words, int number) =>
        Assert.Equal(number, new ChoiceWords(Repository.Dialogs.Answers).Read(stage, words, "en")?.BareNumber);

    private static bool IsYesOrNo(Intent intent, int number) => (intent, number) is (Intent.Yes, 1) or (Intent.No, 2);

    [GeneratedRegex(@"(?<=[.?።] |, )(\d) ([^,{]+?)(?=, \d|$)")]
    private static partial Regex Choice();
}
