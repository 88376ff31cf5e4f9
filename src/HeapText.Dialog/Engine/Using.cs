using HeapText.Agronomy.Quantities;
using HeapText.Agronomy.Use;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>How much compost a crop is given: which crop, how many plants or how much land, then the
/// amounts.</summary>
internal static class Using
{
    /// <summary>A long step. [m] Common practice, no source.</summary>
    private const double StepM = 1;

    private const int MostPlants = 9999;
    private const int MostSteps = 999;

    /// <summary>Takes the question how much compost to use; the crop where the text named it.</summary>
    public static void Begin(Talk talk, string? crop)
    {
        talk.OpenSide();
        if (crop is null) talk.Ask(Cue.CropWanted);
        else TakeCrop(talk, crop);
        AskAgain(talk);
    }

    /// <summary>Says the open question again.</summary>
    public static void AskAgain(Talk talk)
    {
        if (talk.Farmer.Stage == Stage.AskingCrop)
            talk.Say(Catalogue.AskCrop,
                ("choices", new Value.Choices([.. AnswerReader.Known["crop"].Select(key => new Value.Crop(key))])));
        if (talk.Farmer.Side?.Crop is not { } key) return;
        var crop = ("crop", (Value)new Value.Crop(key));
        if (talk.Farmer.Stage == Stage.AskingPlants && IsMixed(key)) talk.Say(Catalogue.AskPots);
        else if (talk.Farmer.Stage == Stage.AskingPlants) talk.Say(Catalogue.AskPlants, crop);
        if (talk.Farmer.Stage == Stage.AskingLength) talk.Say(Catalogue.AskLength, crop);
        if (talk.Farmer.Stage == Stage.AskingWidth) talk.Say(Catalogue.AskWidth);
    }

    /// <summary>Answers the open question; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading)
    {
        if (talk.Farmer.Side is not { } side) return false;
        var crops = AnswerReader.Known["crop"];
        switch (talk.Farmer.Stage, Counts.In(reading))
        {
            case (Stage.AskingCrop, [var choice]) when choice >= 1 && choice <= crops.Count:
                TakeCrop(talk, crops[choice - 1]);
                AskAgain(talk);
                return true;
            case (Stage.AskingPlants, [var plants and >= 1 and <= MostPlants]):
                SayForPlants(talk, plants);
                break;
            case (Stage.AskingLength, [var length and >= 1 and <= MostSteps]):
                talk.Farmer = talk.Farmer with { Side = side with { Length = length } };
                talk.Ask(Cue.WidthWanted);
                AskAgain(talk);
                return true;
            case (Stage.AskingLength, [var length and >= 1 and <= MostSteps, var width and >= 1 and <= MostSteps]):
                SayForLand(talk, length * width);
                break;
            case (Stage.AskingWidth, [var width and >= 1 and <= MostSteps]):
                SayForLand(talk, side.Length * width);
                break;
            default: return false;
        }
        talk.CloseSide();
        return true;
    }

    private static bool IsMixed(string key) => CropTable.TryFind(key, out var crop) && crop.Basis == RateBasis.Mix;

    private static void TakeCrop(Talk talk, string key)
    {
        talk.Farmer = talk.Farmer with { Side = talk.Farmer.Side! with { Crop = key } };
        CropTable.TryFind(key, out var crop);
        talk.Ask(crop!.Basis == RateBasis.Area ? Cue.LengthWanted : Cue.PlantsWanted);
    }

    private static void SayForPlants(Talk talk, int plants)
    {
        var result = CompostUse.For(Request(talk) with { Plants = plants });
        var crop = ("crop", (Value)new Value.Crop(result.Crop.Key));
        var count = ("plants", (Value)new Value.Number(plants));
        var total = ("total", (Value)Measured(result.Needed));
        if (result.Crop.Basis == RateBasis.Mix)
            talk.Say(Catalogue.UseNursery, ("pots", new Value.Count("pots", plants)), total);
        else
            talk.Say(Catalogue.UsePlants, crop, count, total,
                ("each", Measured(Mass.FromKilograms(result.Crop.PerPlant.Typical))));
        SayRest(talk, result);
    }

    private static void SayForLand(Talk talk, int squareSteps)
    {
        var result = CompostUse.For(Request(talk) with { AreaM2 = squareSteps * StepM * StepM });
        var perBucket = CompostAmount.SquareMetresOfOneBucket(result.Crop.PerM2.Typical) / (StepM * StepM);
        talk.Say(Catalogue.UseLand, ("crop", new Value.Crop(result.Crop.Key)), ("total", Measured(result.Needed)),
            ("steps", new Value.Count("steps", (int)Math.Round(perBucket))));
        SayRest(talk, result);
    }

    private static UseRequest Request(Talk talk) => new()
    {
        Crop = talk.Farmer.Side!.Crop!,
        Prices = talk.Office.Prices.PerKg,
        Hygiene = HygieneOf(talk.Farmer),
    };

    /// <summary>The days before harvest are those of manure: compost without any needs none.</summary>
    private static Hygiene HygieneOf(Farmer farmer) => farmer.Heaps.LastOrDefault(heap => heap.IsRipe) switch
    {
        null => Hygiene.Unknown,
        { Plan.HoldsManure: false } => Hygiene.Likely,
        var heap => HeapHeat.HygieneOf(heap, farmer.Rod).Verdict,
    };

    private static Value.Measured Measured(Mass mass) =>
        CompostAmount.Of(mass) is { } amount
            ? new Value.Measured((decimal)amount.Amount, amount.Measure)
            : new Value.Measured(0.5m, "handful");

    /// <summary>What it is worth, and what to take care of.</summary>
    private static void SayRest(Talk talk, UseResult result)
    {
        if (result.Value is { } value && Math.Round(value) >= 1)
            talk.Say(Catalogue.UseWorth, ("money", new Value.Money(value, talk.Office.Prices.Currency)));
        foreach (var caution in result.Cautions)
            if (Catalogue.UseCaution(caution) is { } message) talk.Say(message);
        talk.Say(result.Cautions.Contains(UseCautions.ApplyMonthBeforeSowing)
            ? Catalogue.UseCareBefore
            : Catalogue.UseCare);
    }
}
