using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Heap;

public sealed class HeapAdviceTests
{
    private static readonly Heat?[] Heats = [null, .. Enum.GetValues<Heat>()];
    private static readonly Smell?[] Smells = [null, .. Enum.GetValues<Smell>()];
    private static readonly Moisture?[] Moistures = [null, .. Enum.GetValues<Moisture>()];

    [Fact]
    public void For_EveryCombination_GivesOneKnownAdvice()
    {
        var all = from heat in Heats
                  from smell in Smells
                  from moisture in Moistures
                  from done in (bool[])[true, false]
                  select HeapAdvice.For(heat, smell, moisture, done);

        Assert.All(all, advice => Assert.Contains(advice.Key, HeapAdvice.Keys));
    }

    [Fact]
    public void For_WaterRunsOut_NeverAsksForWater()
    {
        var wet = from heat in Heats from smell in Smells select HeapAdvice.For(heat, smell, Moisture.Dripping, false);

        Assert.All(wet, advice => Assert.DoesNotContain("dry", advice.Key, StringComparison.Ordinal));
    }

    /// <summary>Source named in each row; see docs/agronomy/sources.md and reference notes there.</summary>
    [Theory]
    [InlineData(Heat.Hot, null, Moisture.Dry, "hot-dry")] // [NGEZE]: very hot and dry, turn and water
    [InlineData(null, Smell.Rotten, Moisture.Wet, "rotten")] // [TOFG], [HESPERIAN]: no air, turn, add dry coarse matter
    [InlineData(Heat.Hot, Smell.Ammonia, Moisture.Good, "ammonia")] // common extension advice, from memory
    [InlineData(Heat.Cold, Smell.None, Moisture.Dry, "dry")] // [HESPERIAN p. 403]: no heat, too little water
    [InlineData(Heat.Cold, Smell.None, Moisture.Good, "feed")] // [HESPERIAN p. 403]: moist and cold, nitrogen short
    public void For_SourcedCase_AdvisesAsTheSource(Heat? heat, Smell? smell, Moisture moisture, string key) =>
        Assert.Equal(key, HeapAdvice.For(heat, smell, moisture, turningsDone: false).Key);

    [Fact]
    public void For_FaultOnAnyDay_DoesNotWaitForThePlannedTurning()
    {
        Assert.True(HeapAdvice.For(null, Smell.Ammonia, null, false).TurnNow);
        Assert.True(HeapAdvice.For(null, Smell.Rotten, null, true).TurnNow);
        Assert.False(HeapAdvice.For(Heat.Hot, Smell.Earthy, Moisture.Good, false).TurnNow);
    }

    [Theory]
    [InlineData(Pests.Flies, "flies")]
    [InlineData(Pests.Rats, "rats")]
    [InlineData(Pests.AntsTermites, "ants-termites")]
    public void For_Animals_HaveAdviceOfTheirOwn(Pests pests, string key) =>
        Assert.Equal(key, HeapAdvice.For(pests)!.Value.Key);
}
