using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class ReadinessTests
{
    private static readonly ReadinessSigns Good = new()
    {
        Heat = Heat.Cool,
        DaysSinceTurn = 7,
        Smell = Smell.Earthy,
        LooksDone = true,
        DaysCured = 30,
    };

    [Fact]
    public void Of_AllSignsGood_IsLikelyReadyAndReadyOnceSeedsGrow()
    {
        Assert.Equal(new(ReadinessVerdict.LikelyReady, ReadinessStep.SowTest), Readiness.Of(Good));
        Assert.Equal(
            new(ReadinessVerdict.Ready, ReadinessStep.None),
            Readiness.Of(Good with { Sprout = SproutVerdict.Mature }));
        Assert.Equal(
            new(ReadinessVerdict.LikelyReady, ReadinessStep.SowAgain),
            Readiness.Of(Good with { Sprout = SproutVerdict.PoorSeed }));
    }

    // [REHEAT], from memory: a turned heap that stays cool for 5 to 7 days is past its hot time.
    [Theory]
    [InlineData(Heat.Hot, 7, ReadinessStep.TurnAgain)]
    [InlineData(Heat.Warm, 7, ReadinessStep.TurnAgain)]
    [InlineData(Heat.Cool, 4, ReadinessStep.WaitForReheat)]
    [InlineData(Heat.Cold, 0, ReadinessStep.WaitForReheat)]
    public void Of_HeatNotOver_IsNotYet(Heat heat, int days, ReadinessStep step) => Assert.Equal(
        new(ReadinessVerdict.NotYet, step), Readiness.Of(Good with { Heat = heat, DaysSinceTurn = days }));

    [Theory]
    [InlineData(Smell.Ammonia)]
    [InlineData(Smell.Rotten)]
    [InlineData(Smell.Sour)]
    public void Of_BadSmell_IsNotYetEvenWhenSeedsGrow(Smell smell) => Assert.Equal(
        new(ReadinessVerdict.NotYet, ReadinessStep.PutSmellRight),
        Readiness.Of(Good with { Smell = smell, Sprout = SproutVerdict.VeryMature }));

    [Fact]
    public void Of_StalksToBeSeenCuringTooShortOrSeedsFailing_RestsLonger()
    {
        var rest = new Readiness(ReadinessVerdict.NotYet, ReadinessStep.RestLonger);

        Assert.Equal(rest, Readiness.Of(Good with { LooksDone = false }));
        Assert.Equal(rest, Readiness.Of(Good with { DaysCured = 29 }));
        Assert.Equal(rest, Readiness.Of(Good with { Sprout = SproutVerdict.Immature }));
    }

    [Fact]
    public void Of_SignMissing_AsksForThatSign()
    {
        Assert.Equal(ReadinessStep.FeelHeat, TestFirst(Good with { Heat = null }));
        Assert.Equal(ReadinessStep.FeelHeat, TestFirst(Good with { DaysSinceTurn = null }));
        Assert.Equal(ReadinessStep.SmellIt, TestFirst(Good with { Smell = null }));
        Assert.Equal(ReadinessStep.LookAtIt, TestFirst(Good with { LooksDone = null }));
        Assert.Equal(ReadinessStep.SowTest, TestFirst(Good with { DaysCured = null }));
    }

    [Fact]
    public void Of_EverySetOfSigns_IsReadyOnlyWhenSeedsGrewAndNothingSpeaksAgainst() => Assert.All(Every(), signs =>
    {
        var readiness = Readiness.Of(signs);

        Assert.Equal(readiness.Verdict == ReadinessVerdict.Ready, readiness.Step == ReadinessStep.None);
        if (readiness.Verdict != ReadinessVerdict.Ready) return;
        Assert.True(signs.Sprout is SproutVerdict.Mature or SproutVerdict.VeryMature);
        Assert.True(signs is { Heat: Heat.Cool or Heat.Cold, LooksDone: true, Smell: Smell.Earthy or Smell.None });
    });

    private static ReadinessStep TestFirst(ReadinessSigns signs)
    {
        var readiness = Readiness.Of(signs);
        Assert.Equal(ReadinessVerdict.TestFirst, readiness.Verdict);
        return readiness.Step;
    }

    private static IEnumerable<ReadinessSigns> Every() =>
        from heat in Maybe<Heat>()
        from days in (int?[])[null, 0, 5]
        from smell in Maybe<Smell>()
        from looks in (bool?[])[null, false, true]
        from cured in (int?[])[null, 0, 30]
        from sprout in Maybe<SproutVerdict>()
        select new ReadinessSigns
        {
            Heat = heat,
            DaysSinceTurn = days,
            Smell = smell,
            LooksDone = looks,
            DaysCured = cured,
            Sprout = sprout,
        };

    private static T?[] Maybe<T>()
        where T : struct, Enum => [null, .. Enum.GetValues<T>()];
}
