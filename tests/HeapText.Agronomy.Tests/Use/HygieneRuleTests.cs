using CsCheck;
using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class HygieneRuleTests
{
    private static readonly HygieneEvidence FifteenDaysFiveTurns = new()
    {
        Checks = Hot(3, 6, 9, 12, 15, 17),
        TurnDays = [3, 6, 9, 12, 17],
        Rod = RodKind.Metal,
    };

    private static readonly Gen<HeatOnDay> Check =
        Gen.Select(Gen.Int[0, 40], Gen.Enum<Heat>(), (day, heat) => new HeatOnDay(day, heat));

    private static readonly Gen<HygieneEvidence> Evidence =
        from checks in Check.Array[0, 20]
        from turns in Gen.Int[0, 40].Array[0, 8]
        from rod in Gen.Enum<RodKind>().Nullable()
        from forecast in Gen.Double[0, 40].Nullable()
        select new HygieneEvidence { Checks = checks, TurnDays = turns, Rod = rod, ForecastDaysAbove55 = forecast };

    // 40 CFR 503 App. B, from memory; the same 15 days and 5 turnings in California 14 CCR 17868.3, read.
    [Fact]
    public void Judge_FifteenDaysWithFiveTurnings_IsLikely() =>
        Assert.Equal(new(Hygiene.Likely, 15, 5), HygieneRule.Judge(FifteenDaysFiveTurns));

    [Fact]
    public void Judge_ADayOrATurningShort_IsPartlyOnly()
    {
        var dayShort = FifteenDaysFiveTurns with { Checks = Hot(3, 6, 9, 12, 15, 16), TurnDays = [3, 6, 9, 12, 16] };
        var turnShort = FifteenDaysFiveTurns with { TurnDays = [3, 6, 9, 12, 18] };

        Assert.Equal(new(Hygiene.Partly, 14, 5), HygieneRule.Judge(dayShort));
        Assert.Equal(new(Hygiene.Partly, 15, 4), HygieneRule.Judge(turnShort));
    }

    [Fact]
    public void Judge_WoodenOrUnknownRod_IsLikelyOnlyWhereAForecastGivesTheDegrees()
    {
        var wood = FifteenDaysFiveTurns with { Rod = RodKind.Wood };

        Assert.Equal(Hygiene.Partly, HygieneRule.Judge(wood).Verdict);
        Assert.Equal(Hygiene.Partly, HygieneRule.Judge(wood with { Rod = null }).Verdict);
        Assert.Equal(Hygiene.Likely, HygieneRule.Judge(wood with { ForecastDaysAbove55 = 15 }).Verdict);
    }

    [Theory]
    [InlineData(30, 5, Hygiene.Partly)]
    [InlineData(6, 5, Hygiene.Unlikely)]
    [InlineData(30, 0, Hygiene.Unlikely)]
    public void Judge_ForecastAlone_IsNeverLikely(double days, int turnings, Hygiene expected)
    {
        var evidence = new HygieneEvidence
        {
            ForecastDaysAbove55 = days,
            TurnDays = [.. Enumerable.Range(3, turnings)],
        };

        Assert.Equal(expected, HygieneRule.Judge(evidence).Verdict);
    }

    [Fact]
    public void Judge_NothingHeard_IsUnknown()
    {
        Assert.Equal(Hygiene.Unknown, HygieneRule.Judge(new HygieneEvidence { TurnDays = [3, 4, 5, 12] }).Verdict);
        Assert.Equal(Hygiene.Unknown, HygieneRule.Judge(new HygieneEvidence { Checks = Hot(4, 5) }).Verdict);
    }

    [Fact]
    public void Judge_CoolAtEachOfSeveralChecks_IsUnlikely()
    {
        var cool = new HygieneEvidence { Checks = [new(3, Heat.Warm), new(5, Heat.Cool), new(9, Heat.Cold)] };

        Assert.Equal(new(Hygiene.Unlikely, 0, 0), HygieneRule.Judge(cool));
    }

    [Theory]
    [InlineData(4, 5)]
    [InlineData(5, 2)]
    public void Judge_DaysBetweenTwoHotChecks_CountUpToFourDaysApart(int apart, int days) =>
        Assert.Equal(days, HygieneRule.Judge(new HygieneEvidence { Checks = Hot(3, 3 + apart) }).HotDays);

    [Fact]
    public void Judge_NotHotInBetween_CountsNoDayBetween()
    {
        HeatOnDay[] checks = [new(8, Heat.Hot), new(7, Heat.Warm), new(6, Heat.Hot), new(6, Heat.Hot)];

        Assert.Equal(2, HygieneRule.Judge(new HygieneEvidence { Checks = checks }).HotDays);
    }

    [Fact]
    public void Judge_WeeksWithoutACheck_IsUnknown()
    {
        var gap = new HygieneEvidence { Checks = Hot(3, 12, 20), Rod = RodKind.Metal, TurnDays = [3, 4, 5, 12] };

        Assert.Equal(Hygiene.Unknown, HygieneRule.Judge(gap).Verdict);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Judge_ForecastThatCannotBe_IsRefused(double days) => Assert.Throws<ArgumentOutOfRangeException>(
        () => HygieneRule.Judge(new HygieneEvidence { ForecastDaysAbove55 = days }));

    [Fact]
    public void Judge_AnyEvidence_IsLikelyOnlyByTheRule() => Evidence.Sample(evidence =>
    {
        var result = HygieneRule.Judge(evidence);

        if (result.Verdict != Hygiene.Likely) return;
        Assert.True(result.HotDays >= 15 && result.Turnings >= 5);
        Assert.True(evidence.Rod == RodKind.Metal || evidence.ForecastDaysAbove55 >= 15);
    });

    [Fact]
    public void Judge_OneMoreTurning_NeverMakesItWorse() =>
        Gen.Select(Evidence, Gen.Int[0, 40]).Sample((evidence, day) =>
        {
            var more = evidence with { TurnDays = [.. evidence.TurnDays, day] };

            Assert.True(HygieneRule.Judge(more).Verdict >= HygieneRule.Judge(evidence).Verdict);
        });

    [Fact]
    public void Judge_InAnyOrder_IsTheSame() => Evidence.Sample(evidence =>
    {
        var reversed = evidence with { Checks = [.. evidence.Checks.Reverse()] };

        Assert.Equal(HygieneRule.Judge(evidence), HygieneRule.Judge(reversed));
    });

    private static HeatOnDay[] Hot(params int[] days) => [.. days.Select(day => new HeatOnDay(day, Heat.Hot))];
}
