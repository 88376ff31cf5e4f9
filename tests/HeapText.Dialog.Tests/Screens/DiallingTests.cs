using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Tests.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Screens;

public sealed class DiallingTests
{
    [Fact]
    public void Dial_Stranger_IsAskedForTheGroupAndCanChooseALanguage()
    {
        var talker = new Talker().Dial();
        Assert.Contains("number of your group", talker.Screen.Text, StringComparison.Ordinal);

        var swahili = Repository.Dialogs.Book.Languages.ToList().IndexOf("sw") + 1;
        talker.Enter("*", $"{swahili}");
        Assert.Contains("namba ya kundi", talker.Screen.Text, StringComparison.Ordinal);

        talker.Enter("41");
        Assert.Contains("Tukutumie ujumbe?", talker.ReadOn(), StringComparison.Ordinal);
        talker.Enter("1");
        Assert.Equal((41, "sw", true), (talker.Farmer!.Group, talker.Farmer.Language, talker.Farmer.LanguageChosen));
    }

    [Fact]
    public void Dial_TwiceAtOnceWithoutJoining_IsAnsweredEachTime() =>
        Assert.Contains("No group has the code 7",
            new Talker().Dial().Enter("7", "7").Screen.Text, StringComparison.Ordinal);

    [Fact]
    public void Enter_NoToConsent_EndsTheSession()
    {
        var talker = new Talker().Dial().Enter("41", "#", "2");

        Assert.False(talker.Screen.Open);
        Assert.Null(talker.Farmer!.Group);
    }

    [Fact]
    public void Dial_OpenQuestionFromAText_IsShownWithItsChoices()
    {
        var talker = Talker.WithHeap();
        talker.Pass(Duration.FromDays(3));

        talker.Dial();

        Assert.Contains("How is it? 1 hot, 2 warm", talker.Screen.Text, StringComparison.Ordinal);
        Assert.EndsWith("\n* menu", talker.Screen.Text, StringComparison.Ordinal);
        Assert.Contains("How does the heap smell?", talker.Enter("1").Screen.Text, StringComparison.Ordinal);
        Assert.Equal(Heat.Hot, talker.Heap.Check!.Heat);
    }

    [Fact]
    public void Dial_NoOpenQuestion_ShowsTheMenu() =>
        Assert.StartsWith("1 what is next\n2 I built it", Talker.WithHeap().Dial().Screen.Text,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("4", "1", "1", "Heat")]
    [InlineData("4", "2", "2", "Smell")]
    [InlineData("4", "3", "4", "Moisture")]
    [InlineData("4", "4", "2", "Pests")]
    public void Menu_TellOfTheHeap_TakesTheCheck(string menu, string what, string answer, string told)
    {
        var talker = Talker.WithHeap();
        talker.Now += Duration.FromDays(1);

        talker.Dial().Enter(menu, what, answer);

        var check = talker.Heap.Check!;
        var answers = new Dictionary<string, object?>
        {
            ["Heat"] = check.Heat,
            ["Smell"] = check.Smell,
            ["Moisture"] = check.Moisture,
            ["Pests"] = check.Pests,
        };
        Assert.Equal(told, answers.Single(pair => pair.Value is not null).Key);
    }

    [Fact]
    public void Menu_FreeWords_AreTakenOnEveryScreen()
    {
        var talker = Talker.WithHeap();
        talker.Now += Duration.FromDays(1);

        talker.Dial().Enter("9", "smells like urine");

        Assert.Equal(Smell.Ammonia, talker.Heap.Check!.Smell);
    }

    [Fact]
    public void Menu_NumberNotOffered_IsAskedAgainAndTakesNothing()
    {
        var talker = Talker.WithHeap();
        var before = talker.Farmer;

        talker.Dial().Enter("77");

        Assert.StartsWith("Please type one of the numbers.", talker.Screen.Text, StringComparison.Ordinal);
        Assert.Equivalent(before, talker.Farmer! with { Screen = null, MessagesMade = before!.MessagesMade });
    }

    [Fact]
    public void Menu_Stop_AsksFirst_AndTheWordDoesNot()
    {
        var talker = Talker.WithHeap().Dial().Enter("11");
        Assert.False(talker.Farmer!.Stopped);
        Assert.True(talker.Enter("1").Farmer!.Stopped);
        Assert.False(talker.Screen.Open);

        Assert.Contains("1 come back", talker.Dial().Screen.Text, StringComparison.Ordinal);
        Assert.False(talker.Enter("1").Farmer!.Stopped);

        Assert.True(Talker.WithHeap().Dial().Enter("4", "stop").Farmer!.Stopped);
    }

    [Fact]
    public void Menu_Urgent_TellsTheTrainerAndAsksForNothing()
    {
        var talker = Talker.WithHeap().Dial().Enter("9", "3");

        Assert.Equal(ConcernReason.Urgent, talker.Farmer!.Concern!.Reason);
        Assert.Contains("clinic", talker.ReadOn(), StringComparison.Ordinal);
        Assert.False(talker.Screen.Open);
    }

    [Fact]
    public void Back_AfterAReport_UndoesNothing()
    {
        var talker = Talker.WithHeap();
        talker.Pass(Duration.FromDays(3));

        talker.Dial().Enter("1", "*", "*");

        Assert.Equal(Heat.Hot, talker.Heap.Check!.Heat);
        Assert.Equal(Stage.AskingSmell, talker.Farmer!.Stage);
        Assert.Contains("How does the heap smell?", talker.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Number_BeforeTheQuestionWasRead_IsNotTakenForItsAnswer()
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..3]).Dial().Enter("2");
        Assert.DoesNotContain("At what hour", talker.Screen.Text, StringComparison.Ordinal);

        talker.Enter("4");

        Assert.Null(talker.Farmer!.Hour);
        Assert.Contains("At what hour", talker.Screen.Text, StringComparison.Ordinal);
        Assert.Equal(12, talker.Enter("4").Farmer!.Hour);
    }

    [Fact]
    public void Number_AfterAReminderAskedSomethingElse_IsNotTakenForItsAnswer()
    {
        var talker = Talker.WithHeap();
        talker.Now = talker.NextDue!.Value - Duration.FromMinutes(1);
        talker.Dial().Enter("7", "3");
        talker.Pass(Duration.FromMinutes(1));

        talker.Enter("3");

        Assert.Null(talker.Heap.Check);
        Assert.Contains("First feel the heat.", talker.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void TurnNow_HasNumbersOnTheScreen()
    {
        var talker = Talker.WithHeap();
        talker.Pass(Duration.FromDays(3));
        talker.Hear("hot, earthy, good").Dial();

        Assert.Contains("1 turned, 2 not today", talker.Screen.Text, StringComparison.Ordinal);
        talker.Enter("1");

        Assert.Single(talker.Heap.TurnedOn);
    }

    [Theory]
    [InlineData("yes", true)]
    [InlineData("no", false)]
    [InlineData("1.", true)]
    public void Menu_Stop_AnsweredInWords_AnswersNoHiddenQuestion(string answer, bool stops)
    {
        var talker = WhenAskedIfTheHeapStands().Dial().Enter("*", "11");

        talker.Enter(answer);

        Assert.Equal((stops, HeapStep.Planned), (talker.Farmer!.Stopped, talker.Heap.Step));
    }

    [Theory]
    [InlineData("yes")]
    [InlineData("no")]
    public void Menu_YesOrNo_IsAskedAgainAndAnswersNoHiddenQuestion(string answer)
    {
        var talker = WhenAskedIfTheHeapStands().Dial().Enter("*");

        talker.Enter(answer);

        Assert.Equal((Stage.AskingBuilt, HeapStep.Planned), (talker.Farmer!.Stage, talker.Heap.Step));
        Assert.StartsWith("Please type one of the numbers.", talker.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Number_AfterATextMovedTheSameQuestionOn_IsNotTakenForItsAnswer()
    {
        var talker = new Talker().Hear("join 41", "yes").Dial().Enter("1", "1");
        Assert.Contains("How much maize stalks?", talker.Screen.Text, StringComparison.Ordinal);
        talker.Now += Duration.FromMinutes(1);
        talker.Hear("20 wheelbarrows", "3", "1");
        Assert.Contains("How much cow dung?", talker.Said, StringComparison.Ordinal);

        talker.Enter("20");

        Assert.Contains("How much cow dung?", talker.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Consent_AskedByATextDaysAgo_IsAnsweredAtOnceOnTheScreen()
    {
        var talker = new Talker().Hear("join 41");
        talker.Now += Duration.FromDays(2);

        talker.Dial().Enter("#", "1");

        Assert.Equal(41, talker.Farmer!.Group);
    }

    [Fact]
    public void Menu_HeatWhenTheRodIsNotKnown_WarnsOfBurnsFirst()
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..5]);
        Assert.Null(talker.Farmer!.Rod);

        talker.Dial().Enter("*", "4", "1");

        Assert.StartsWith("Take care: a metal rod", talker.Screen.Text, StringComparison.Ordinal);
        Assert.Contains("1 hot, 2 warm", talker.ReadOn(), StringComparison.Ordinal);
        Assert.StartsWith("First feel the heat.", Talker.WithHeap().Dial().Enter("4", "1").Screen.Text,
            StringComparison.Ordinal);
    }

    private static Talker WhenAskedIfTheHeapStands()
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..3]);
        talker.Pass(Duration.FromDays(3));
        Assert.Equal(Stage.AskingBuilt, talker.Farmer!.Stage);
        return talker;
    }
}
