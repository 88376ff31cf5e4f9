using HeapText.Agronomy.Heap;
using static HeapText.Agronomy.Heap.HeapActions;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class DiagnosisTests
{
    private static readonly DiagnosisInput Hot = new() { Phase = HeapPhase.Hot };
    private static readonly DiagnosisInput Rotten = Hot with { Smell = Smell.Rotten, Moisture = Moisture.Wet };
    private static readonly DiagnosisInput Dry = Hot with { Heat = Heat.Cold, Moisture = Moisture.Dry };

    /// <summary>Sources as named in docs/agronomy/sources.md.</summary>
    [Theory]
    // NGEZE, read: very hot and dry, turn and water.
    [InlineData(Heat.Hot, null, Moisture.Dry, HeapPhase.Hot, "dry-hot-core", TurnWater)]
    // NGEZE, read: warm and moist goes well; DCCN, read: as hot as can be held no more, no turning.
    [InlineData(Heat.Hot, Smell.Earthy, Moisture.Good, HeapPhase.Hot, "working-well", KeepGoing)]
    // TOFG and HESPERIAN, read: rotten is no air; turn, add dry coarse stuff.
    [InlineData(null, Smell.Rotten, Moisture.Wet, HeapPhase.Hot, "no-air", AddDry)]
    // Common extension advice, from memory: ammonia is too much nitrogen; add brown, cover with soil.
    [InlineData(Heat.Hot, Smell.Ammonia, Moisture.Good, HeapPhase.Hot, "too-much-nitrogen", AddBrown)]
    // HESPERIAN p. 403, read: no heat is too little or too much water.
    [InlineData(Heat.Cold, Smell.None, Moisture.Dry, HeapPhase.Hot, "too-dry", TurnWater)]
    [InlineData(Heat.Cold, Smell.None, Moisture.Wet, HeapPhase.Hot, "too-wet", AddDry)]
    // HESPERIAN, read: no smell, cold and moist is nitrogen short, too small, or finished.
    [InlineData(Heat.Cold, Smell.None, Moisture.Good, HeapPhase.Heating, "too-little-nitrogen", Feed)]
    [InlineData(Heat.Cold, Smell.None, Moisture.Good, HeapPhase.Curing, "finished-heating", LetCure)]
    // REHEAT, from memory: warm again after settling is not done.
    [InlineData(Heat.Hot, Smell.Earthy, Moisture.Good, HeapPhase.Curing, "reheated", Turn)]
    // Cornell, read: 40-50 degrees C in 2-3 days, so not yet on the first.
    [InlineData(Heat.Cold, Smell.None, Moisture.Good, HeapPhase.Fresh, "just-built", Wait)]
    public void Of_SourcedCase_SaysWhatTheSourceSays(
        Heat? heat, Smell? smell, Moisture? moisture, HeapPhase phase, string cause, string action)
    {
        var diagnosis = Diagnosis.Of(new() { Heat = heat, Smell = smell, Moisture = moisture, Phase = phase });

        Assert.Equal((cause, action), (diagnosis.Findings[0].Cause, diagnosis.Actions[0]));
    }

    /// <summary>HESPERIAN p. 403, read: flies, cover with soil; ants, too dry; food out.</summary>
    [Theory]
    [InlineData(Pests.Flies, "not-covered", CoverSoil)]
    [InlineData(Pests.Rats, "food-inside", RemoveFood)]
    [InlineData(Pests.AntsTermites, "too-dry", TurnWater)]
    public void Of_AnimalsAlone_AsksForWhatDrivesThemOff(Pests pests, string cause, string action)
    {
        var diagnosis = Diagnosis.Of(Hot with { Pests = pests });

        Assert.Equal((cause, action), (diagnosis.Findings[0].Cause, diagnosis.Actions[0]));
    }

    [Fact]
    public void Of_RatsWithAFault_AsksForBothAndForGloves()
    {
        var diagnosis = Diagnosis.Of(Rotten with { Pests = Pests.Rats });

        Assert.Equal([AddDry, RemoveFood], diagnosis.Actions);
        Assert.Contains(HeapCautions.Gloves, diagnosis.Cautions);
    }

    [Fact]
    public void Of_RottenAndDryWithRats_IsSurerOfFoodInside() => Assert.Contains(
        new Finding(HeapCauses.FoodInside, Confidence.High),
        Diagnosis.Of(Hot with { Smell = Smell.Rotten, Moisture = Moisture.Dry, Pests = Pests.Rats }).Findings);

    /// <summary>Howard, as told by Solomon: pits fill with water in heavy rain.</summary>
    [Fact]
    public void Of_ADrippingPit_IsDugOut() => Assert.Equal(
        [Drain, KeepRainOff], Actions(Hot with { Moisture = Moisture.Dripping, Form = HeapForm.Pit }));

    [Fact]
    public void Of_ColdAndDry_AsksForWaterBeforeFeed() => Assert.Equal([TurnWater, Feed], Actions(Dry));

    [Fact]
    public void Of_ColdAndDryTurnedYesterday_AsksForWaterWithoutTurning()
    {
        var diagnosis = Diagnosis.Of(Dry with { DaysSinceTurn = 1 });

        Assert.Equal([AddWater], diagnosis.Actions);
        Assert.False(diagnosis.TurnNow);
    }

    [Fact]
    public void Of_StillDryAfterWater_LooksDeeperFirst()
    {
        var diagnosis = Diagnosis.Of(Dry with { LastActions = [new(TurnWater, 1)] });

        Assert.Equal([LookDeeper], diagnosis.Actions);
        Assert.InRange(diagnosis.NextCheckDays, 1, 2);
    }

    [Fact]
    public void Of_ColdAfterFeed_GivesItTime()
    {
        var cold = Hot with { Heat = Heat.Cold, Moisture = Moisture.Good, LastActions = [new(Feed, 3)] };

        Assert.Equal([Wait], Actions(cold));
    }

    [Fact]
    public void Of_CoolAgainAfterATurning_FeedsInsteadOfTurningAgain()
    {
        var cool = Hot with { Heat = Heat.Cool, Moisture = Moisture.Good };

        Assert.Equal([Turn], Actions(cool));
        Assert.Equal([Feed], Actions(cool with { DaysSinceTurn = 4 }));
    }

    [Fact]
    public void Of_RottenTwice_TellsAPerson()
    {
        Assert.False(Diagnosis.Of(Rotten).NeedsPerson);
        Assert.False(Diagnosis.Of(Rotten with { LastActions = [new(AddDry, 1)] }).NeedsPerson);
        Assert.True(Diagnosis.Of(Rotten with { LastActions = [new(AddDry, 4)] }).NeedsPerson);
        Assert.False(Diagnosis.Of(Rotten with { LastActions = [new(AddDry, 11)] }).NeedsPerson);
    }

    [Fact]
    public void Of_TurningPlannedTheDayAfterAnother_StillAsksForIt()
    {
        var planned = DiagnosisInput.At(HeapMethods.Usual, ageDays: 4, daysSinceTurn: 1);

        Assert.Equal([Turn], Actions(planned with { Heat = Heat.Hot, Moisture = Moisture.Good }));
    }

    /// <summary>Derived from contact temperatures: a stick hides about ten degrees.</summary>
    [Fact]
    public void Of_CoolOnAStick_WaitsWhereARodWouldNot()
    {
        var cool = Hot with { Heat = Heat.Cool, Moisture = Moisture.Good };

        Assert.Equal([Wait], Actions(cool with { Rod = RodKind.Wood }));
        Assert.Equal([Turn], Actions(cool with { Rod = RodKind.Metal }));
    }

    [Fact]
    public void Of_NothingTold_AsksForTheCheck()
    {
        var diagnosis = Diagnosis.Of(new());

        Assert.Empty(diagnosis.Findings);
        Assert.Equal([AskCheck], diagnosis.Actions);
    }

    /// <summary>A composters' guide, read: do not open a smouldering heap, more air feeds the fire.</summary>
    [Theory]
    [InlineData(UrgentSign.Smouldering)]
    [InlineData(UrgentSign.Smoke)]
    public void Of_FireInside_IsLeftShut(UrgentSign sign) =>
        Assert.Equal([DoNotOpen, KeepAway, CallOfficer], Actions(new() { Signs = [sign] }));

    [Fact]
    public void Of_SeveralUrgentSigns_SeesToPeopleFirst()
    {
        var diagnosis = Diagnosis.Of(new() { Signs = [UrgentSign.Smoke, UrgentSign.Burn] });

        Assert.Equal(["burn", "fire"], diagnosis.Findings.Select(finding => finding.Cause));
        Assert.Equal([CoolBurn, GoToClinic, DoNotOpen, KeepAway, CallOfficer], diagnosis.Actions);
    }

    private static IReadOnlyList<string> Actions(DiagnosisInput input) => Diagnosis.Of(input).Actions;
}
