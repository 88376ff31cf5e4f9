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
        var stage = talk.Farmer.Stage;
        var before = talk.Farmer.Use is { } open && IsUsing(stage) ? open.Before : stage;
        talk.Farmer = talk.Farmer with { Use = new UseDraft { Before = before, TalkOf = talk.Farmer.TalkOf } };
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
        if (talk.Farmer.Use?.Crop is not { } key) return;
        var crop = ("crop", (Value)new Value.Crop(key));
        if (talk.Farmer.Stage == Stage.AskingPlants) talk.Say(Catalogue.AskPlants, crop);
        if (talk.Farmer.Stage == Stage.AskingLength) talk.Say(Catalogue.AskLength, crop);
        if (talk.Farmer.Stage == Stage.AskingWidth) talk.Say(Catalogue.AskWidth);
    }

    /// <summary>Answers the open question; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading)
    {
        if (talk.Farmer.Use is not { } use) return false;
        if (reading.BareNumber is not { } number || number % 1 != 0 || number < 1) return false;
        var crops = AnswerReader.Known["crop"];
        switch (talk.Farmer.Stage)
        {
            case Stage.AskingCrop when number <= crops.Count:
                TakeCrop(talk, crops[(int)number - 1]);
                AskAgain(talk);
                return true;
            case Stage.AskingPlants when number <= MostPlants:
                SayForPlants(talk, (int)number);
                break;
            case Stage.AskingLength when number <= MostSteps:
                talk.Farmer = talk.Farmer with { Use = use with { Length = (int)number } };
                talk.Ask(Cue.WidthWanted);
                AskAgain(talk);
                return true;
            case Stage.AskingWidth when number <= MostSteps:
                SayForLand(talk, use.Length * (int)number);
                break;
            default: return false;
        }
        GoBack(talk, use);
        return true;
    }

    private static bool IsUsing(Stage stage) =>
        stage is Stage.AskingCrop or Stage.AskingPlants or Stage.AskingLength or Stage.AskingWidth;

    private static void TakeCrop(Talk talk, string key)
    {
        talk.Farmer = talk.Farmer with { Use = talk.Farmer.Use! with { Crop = key } };
        CropTable.TryFind(key, out var crop);
        talk.Ask(crop!.Basis == RateBasis.Area ? Cue.LengthWanted : Cue.PlantsWanted);
    }

    private static void SayForPlants(Talk talk, int plants)
    {
        var result = CompostUse.For(Request(talk) with { Plants = plants });
        var crop = ("crop", (Value)new Value.Crop(result.Crop.Key));
        var count = ("plants", (Value)new Value.Number(plants));
        var total = ("total", (Value)Measured(result.Needed));
        if (result.Crop.Basis == RateBasis.Mix) talk.Say(Catalogue.UseNursery, count, total);
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
            ("steps", new Value.Number((int)Math.Round(perBucket))));
        SayRest(talk, result);
    }

    private static UseRequest Request(Talk talk) => new()
    {
        Crop = talk.Farmer.Use!.Crop!,
        Prices = talk.Office.Prices.PerKg,
        Hygiene = talk.Farmer.Heaps.LastOrDefault(heap => heap.IsRipe) is { } heap
            ? HeapHeat.HygieneOf(heap, talk.Farmer.Rod).Verdict
            : Hygiene.Unknown,
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

    /// <summary>Back to the question that was open before.</summary>
    private static void GoBack(Talk talk, UseDraft use)
    {
        talk.Ask(Script.CueTo(use.Before));
        talk.Farmer = talk.Farmer with { Use = null, TalkOf = use.TalkOf };
        if (OpenQuestion.IsOpen(talk)) OpenQuestion.AskAgain(talk);
    }
}
