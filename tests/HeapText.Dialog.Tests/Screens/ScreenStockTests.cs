using HeapText.Agronomy.Heap;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Tests.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Screens;

public sealed class ScreenStockTests
{
    [Fact]
    public void Picked_ByNumbersAlone_MakesARecipeThatGoesByTextToo()
    {
        var talker = Joined().Enter("1", "1", "20", "1", "2", "1", "5", "1", "3", "1", "14", "1", "0");

        Assert.Equal(HeapStep.Planned, talker.Heap.Step);
        Assert.Contains(talker.Says, message => message.Text.Contains("Each round", StringComparison.Ordinal));
        var texts = talker.Says.Select(message => message.Text).ToList();
        var read = talker.ReadOn();
        Assert.All(texts, text => Assert.All(text.Split(' '), word => Assert.Contains(word, read)));
        Assert.False(talker.Screen.Open);
    }

    [Theory]
    [InlineData("1*5", 1.5)]
    [InlineData("1.5", 1.5)]
    [InlineData("12", 12)]
    [InlineData("one and a half", 1.5)]
    public void Amount_AsABasicPhoneTypesIt_IsRead(string typed, double amount)
    {
        var talker = Joined().Enter("3", "1", typed, "1");

        Assert.Equal(new DraftItem("cow-dung", (decimal)amount, "bucket"), talker.Farmer!.Draft!.Items.Single());
    }

    [Fact]
    public void Amount_WithItsMeasure_IsNotAskedForIt() =>
        Assert.Equal(new DraftItem("cow-dung", 3, "sack"),
            Joined().Enter("3", "1", "3 sacks").Farmer!.Draft!.Items.Single());

    [Fact]
    public void Measure_UsualOneFirst_AllOnPages()
    {
        var talker = Joined().Enter("3", "1", "3");
        Assert.Contains("1 buckets", talker.Screen.Text, StringComparison.Ordinal);

        var list = talker.ReadOn();

        Assert.All(StepByStep.MeasuresOf("cow-dung"), key =>
            Assert.Contains(
                $"{Repository.Dialogs.Book.File("en").Measures[key].Other}", list, StringComparison.Ordinal));
    }

    [Fact]
    public void Line_TypedFirst_IsTheWholeStock()
    {
        var talker = Joined().Enter("20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung");

        Assert.Equal(HeapStep.Planned, talker.Heap.Step);
    }

    [Fact]
    public void Line_TypedAfterAPick_IsAdded()
    {
        var talker = Joined().Enter("3", "1", "14", "1", "20 wheelbarrows maize stalks");

        Assert.Equal(["cow-dung", "maize-stover"], talker.Farmer!.Draft!.Items.Select(item => item.Material));
        Assert.Contains("What else?", talker.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Back_FromMeasureToRoles_GoesQuestionByQuestion()
    {
        var talker = Joined().Enter("3", "1", "4");

        Assert.Contains("How much cow dung?", talker.Enter("*").Screen.Text, StringComparison.Ordinal);
        Assert.Contains("Which manure", talker.Enter("*").Screen.Text, StringComparison.Ordinal);
        Assert.Contains("What do you have?", talker.Enter("*").Screen.Text, StringComparison.Ordinal);
        Assert.Contains("1 what is next", talker.Enter("*").Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Drop_InMidStock_NewSessionGoesOnWhereItWas()
    {
        var talker = Joined().Enter("1", "1", "20", "1", "3", "1", "14");

        talker.Now += Duration.FromMinutes(10);
        talker.Dial();

        Assert.Contains("What did you measure cow dung with?", talker.Screen.Text, StringComparison.Ordinal);
        talker.Enter("1");
        Assert.Equal(2, talker.Farmer!.Draft!.Items.Count);
    }

    [Fact]
    public void Drop_InMidStock_GoesOnByText()
    {
        var talker = Joined().Enter("1", "1", "20", "1", "3", "1", "14");

        talker.Hear("1");

        Assert.Contains("14 buckets of cow dung", talker.Said, StringComparison.Ordinal);
        talker.Hear("0");
        Assert.Equal(HeapStep.Planned, talker.Heap.Step);
    }

    [Fact]
    public void Drop_InMidStock_ReminderAsksTheSameAndLosesNothing()
    {
        var talker = Joined().Enter("1", "1", "20", "1", "3", "1");

        var asked = talker.Pass(Duration.FromDays(4));

        Assert.Contains("How much cow dung?", Assert.Single(asked).Message.Text, StringComparison.Ordinal);
        Assert.Equal(2, talker.Farmer!.Draft!.Items.Count);
    }

    [Fact]
    public void ReportFromTheMenu_InMidStock_LosesNothing()
    {
        var talker = Talker.WithHeap();
        talker.Now += Duration.FromDays(1);
        talker.Dial().Enter("6", "#", "3", "1", "4", "1");

        talker.Enter("hot, earthy, good");

        Assert.Equal(Heat.Hot, talker.Heap.Check!.Heat);
        Assert.Equal("cow-dung", talker.Farmer!.Draft!.Items.Single().Material);
        Assert.Contains("What else?", talker.ReadOn(), StringComparison.Ordinal);
    }

    [Fact]
    public void Drop_InMidReading_NewSessionShowsTheSamePage()
    {
        var talker = Joined().Enter("20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung");
        talker.Enter("#", "#");
        var page = talker.Screen;

        talker.Now += Duration.FromMinutes(10);

        Assert.Equal(page, talker.Dial().Screen);
        talker.ReadOn();
        Assert.StartsWith("1 what is next", talker.Dial().Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Farmer_AfterTheSession_HoldsNoTexts()
    {
        var talker = Joined().Enter("20 wheelbarrows maize stalks, 5 wheelbarrows green weeds, 14 buckets cow dung");
        talker.ReadOn();
        Assert.Empty(talker.Farmer!.Screen!.Reading);

        talker.Pass(Duration.FromDays(4));

        Assert.Null(talker.Farmer.Screen);
    }

    private static Talker Joined() => new Talker().Dial().Enter("41", "#", "1", "#");
}
