using HeapText.Dialog.Engine;
using NodaTime;

namespace HeapText.Dialog.Tests.Engine;

/// <summary>Answers that once led the talk astray.</summary>
public sealed class AnswerTests
{
    private static readonly Duration Day = Duration.FromDays(1);

    [Theory]
    [InlineData("ok")]
    [InlineData("sawa")]
    [InlineData("ok thanks")]
    [InlineData("1")]
    public void NodAfterTheRecipe_IsNotTakenAsBuilt(string nod)
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..3]).Hear(nod);

        Assert.Equal(HeapStep.Planned, talker.Heap.Step);
    }

    [Theory]
    [InlineData("ok")]
    [InlineData("yes")]
    public void NodAfterTurnItNow_IsNotTakenAsTurned(string nod)
    {
        var talker = SmellingHeap().Hear(nod);

        Assert.Null(talker.Heap.LastTurned);
        Assert.Empty(talker.Says);
    }

    [Theory]
    [InlineData("done")]
    [InlineData("turned")]
    public void DoneAfterTurnItNow_IsTurned(string done) =>
        Assert.NotNull(SmellingHeap().Hear(done).Heap.LastTurned);

    [Fact]
    public void AmountAnsweredWithItsMaterial_KeepsTheRestOfTheStock()
    {
        var talker = new Talker().Hear("join 41", "yes",
            "10 wheelbarrows maize stalks, some cow dung, 5 wheelbarrows green weeds", "5 buckets of cow dung");

        var stock = talker.Farmer!.Draft?.Items.Select(i => i.Material)
            ?? talker.Heap.Stock.Select(portion => portion.Material);
        Assert.Equal(["maize-stover", "cow-dung", "green-weeds"], stock);
    }

    [Fact]
    public void TotalToldAfterWhatToBring_IsNotAddedOnTop()
    {
        var talker = new Talker().Hear("join 41", "yes", "6 wheelbarrows maize stalks, 3 buckets cow dung");
        var missing = talker.Farmer!.Draft!.Missing.Single(m => m.Material == "maize-stover").Amount;

        talker.Hear($"{6 + missing:0} wheelbarrows maize stalks, 6 buckets cow dung");

        Assert.Equal(6 + missing, talker.Heap.Stock.Single(p => p.Material == "maize-stover").Amount);
    }

    [Theory]
    [InlineData("metal", Rod.Metal)]
    [InlineData("wooden stick", Rod.Wood)]
    public void RodToldInWords_IsNotTakenAsSomethingToKeepOut(string words, Rod rod) =>
        Assert.Equal(rod, new Talker().Hear(Talker.ToABuiltHeap[..5]).Hear(words).Farmer!.Rod);

    [Fact]
    public void FirstCheck_RodNeverTold_CarriesTheBurnCautionAllTheSame()
    {
        var talker = new Talker().Hear(Talker.ToABuiltHeap[..4]);

        var said = talker.Pass(3 * Day).Select(s => s.Message.Text).ToList();

        Assert.Contains(said, text => text.Contains("not a child", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("it is hot")]
    [InlineData("5")]
    [InlineData("too hot to squeeze")]
    public void Squeeze_CannotBeDone_EndsInAdviceNotInTheQuestionAgain(string answer)
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("hot", "1", answer);

        Assert.NotEqual(Stage.AskingMoisture, talker.Farmer!.Stage);
        Assert.Contains(talker.Says, m => m.Text.Contains("Turn it now", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("i sprayed water on it")]
    [InlineData("2 buckets ash from the kitchen fire")]
    public void EverydayWords_AreNoEmergency(string text) =>
        Assert.Null(Talker.WithHeap().Hear(text).Farmer!.Concern);

    [Fact]
    public void TurnedWithWhatWasMixedIn_IsNotTakenAsNewStock()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("turned and added 2 buckets cow dung");

        Assert.Single(talker.Heap.TurnedOn);
    }

    [Fact]
    public void TurnedYesterday_AfterTurnedToday_CountsNoFurtherTurning()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);

        talker.Hear("turned", "turned yesterday");

        Assert.Single(talker.Heap.TurnedOn);
    }

    [Fact]
    public void Later_DayAfterDay_IsAskedAgainOnTheDayThatWasSaid()
    {
        var talker = Talker.WithHeap();
        talker.Pass(3 * Day);
        for (var i = 0; i < 6; i++)
        {
            talker.Hear("later");
            Assert.Contains("ask again", talker.Says[0].Text, StringComparison.Ordinal);

            var said = talker.Pass(Day).Select(s => s.Message.Text).ToList();

            Assert.Contains(said, text => text.Contains("Have you turned it?", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void WhatToBring_StaysOpenBehindAReminder()
    {
        var talker = Talker.WithHeap().Hear("new heap", "6 wheelbarrows maize stalks, 3 buckets cow dung");
        talker.Pass(3 * Day);
        talker.Hear("hot", "1", "3", "turned");

        talker.Hear("1");

        Assert.Equal(2, talker.Farmer!.Heaps.Count);
    }

    [Fact]
    public void Thanks_NeverFillsTheOfficersList()
    {
        var talker = Talker.WithHeap().Hear("thank you", "ok", "asante", "hello");

        Assert.Null(talker.Farmer!.Concern);
    }

    [Fact]
    public void Ready_HeapThatNeverGotHot_CarriesTheIntervalForRawManure()
    {
        var talker = Talker.WithHeap();
        while (talker.Heap.Step != HeapStep.Curing)
        {
            talker.Pass(talker.NextDue!.Value - talker.Now);
            talker.Hear(talker.Farmer!.Stage == Stage.AskingReheat ? ["cold"] : ["cold", "1", "3"]);
            if (talker.Farmer.Stage == Stage.AwaitingTurn) talker.Hear("turned");
        }
        talker.Pass(talker.NextDue!.Value - talker.Now);

        talker.Hear("1");

        Assert.Contains(talker.Says, m => m.Text.Contains("4 months", StringComparison.Ordinal));
    }

    [Fact]
    public void Hour_ChangedLater_MovesTheReminders()
    {
        var talker = Talker.WithHeap().Hear("hour", "5");

        var said = talker.Pass(4 * Day);

        Assert.Equal(13, said[0].At.InUtc().Hour);
    }

    [Fact]
    public void OverdueHeap_TurnedAtLast_LeavesTheOfficersList()
    {
        var talker = Talker.WithHeap();
        talker.Pass(20 * Day);
        Assert.Equal(ConcernReason.Overdue, talker.Farmer!.Concern!.Reason);

        talker.Hear("turned");

        Assert.Null(talker.Farmer!.Concern);
    }

    /// <summary>A heap of two days that smells like urine: it is to be turned.</summary>
    private static Talker SmellingHeap()
    {
        var talker = Talker.WithHeap();
        talker.Pass(2 * Day);
        return talker.Hear("smells like urine");
    }
}
