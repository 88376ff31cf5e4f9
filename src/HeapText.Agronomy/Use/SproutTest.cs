namespace HeapText.Agronomy.Use;

/// <summary>What a sprout test says of compost.</summary>
public enum SproutVerdict
{
    /// <summary>Too few seeds were sown to say anything.</summary>
    TooFewSeeds,

    /// <summary>They did not grow in soil either: the seed was bad, or dry.</summary>
    PoorSeed,

    /// <summary>The compost holds growth back: let it rest longer.</summary>
    Immature,

    /// <summary>Ripe enough to use.</summary>
    Mature,

    /// <summary>As good as soil.</summary>
    VeryMature,
}

/// <summary>Seeds sown in compost and counted after 5 to 7 days, as a test of ripeness.</summary>
public static class SproutTest
{
    /// <summary>Seeds that are needed. [GERMINATION], read: 8 a pot.</summary>
    public const int FewestSeeds = 8;

    /// <summary>Judges a test.</summary>
    /// <param name="sown">Seeds sown in the compost, 1 or more.</param>
    /// <param name="grown">Those that sprouted and grow well, 0 to <paramref name="sown"/>.</param>
    /// <param name="grownInSoil">Those of as many seeds sown in good soil on the same day; null without.</param>
    /// <remarks>
    /// Sources, keyed in docs/agronomy/sources.md. Without soil beside it: 3 of 4 sprout and grow [IFAS], read. With
    /// soil: above 90 % of the soil's very mature, 80-90 % mature, below 80 % immature [CCQC], from memory. Seed is
    /// poor when less than 3 of 4 grow in soil: chosen.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Counts outside their range.</exception>
    public static SproutVerdict Judge(int sown, int grown, int? grownInSoil = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sown);
        ArgumentOutOfRangeException.ThrowIfNegative(grown);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grown, sown);
        ArgumentOutOfRangeException.ThrowIfNegative(grownInSoil ?? 0, nameof(grownInSoil));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(grownInSoil ?? 0, sown, nameof(grownInSoil));
        if (sown < FewestSeeds) return SproutVerdict.TooFewSeeds;
        if (grownInSoil is not { } soil) return IsMost(grown, sown) ? SproutVerdict.Mature : SproutVerdict.Immature;
        if (!IsMost(soil, sown)) return SproutVerdict.PoorSeed;

        var percent = 100.0 * grown / soil;
        return percent > 90 ? SproutVerdict.VeryMature
            : percent >= 80 ? SproutVerdict.Mature
            : SproutVerdict.Immature;
    }

    private static bool IsMost(int grown, int sown) => (long)grown * 4 >= (long)sown * 3;
}
