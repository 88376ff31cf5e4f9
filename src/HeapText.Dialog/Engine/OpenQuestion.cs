using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>The question the farmer has not answered yet.</summary>
internal static class OpenQuestion
{
    /// <summary>True when one is open.</summary>
    public static bool IsOpen(Talk talk) => talk.Farmer.Stage is not (Stage.Tending or Stage.Building);

    /// <summary>Says it again; nothing when none is open.</summary>
    public static void AskAgain(Talk talk)
    {
        talk.Farmer = talk.Farmer with { AskedAt = talk.Now };
        switch (talk.Farmer.Stage)
        {
            case Stage.AskingStock or Stage.PickingMaterial or Stage.AskingAmount or Stage.AskingMeasure
                or Stage.AskingWhich or Stage.Gathering:
                Stocktaking.AskAgain(talk);
                break;
            case Stage.AskingHour or Stage.AskingRod:
                Tending.AskAgain(talk);
                break;
            case Stage.AskingCrop or Stage.AskingPlants or Stage.AskingLength or Stage.AskingWidth:
                Using.AskAgain(talk);
                break;
            case Stage.AskingRain or Stage.AskingWater or Stage.AskingLabour:
                MethodAdvice.AskAgain(talk);
                break;
            case Stage.AskingHeap:
                AskWhichHeap(talk);
                break;
            case Stage.AskingConsent:
                Joining.AskConsent(talk);
                break;
            default:
                if (talk.TalkedOf is { } heap) AskAgainOf(talk, heap);
                break;
        }
    }

    /// <summary>Asks which of the heaps in the report was meant.</summary>
    public static void AskWhichHeap(Talk talk)
    {
        var meant = talk.Farmer.Report?.Heaps ?? [];
        var heaps = talk.Farmer.Heaps.Where(h => meant.Contains(h.Number))
            .Select(h => (h.Number, h.BuiltOn!.Value)).ToList();
        talk.Say(Catalogue.WhichHeap, ("choices", new Value.Heaps(heaps)));
    }

    private static void AskAgainOf(Talk talk, HeapRecord heap)
    {
        if (talk.Farmer.Stage == Stage.AskingBuilt) talk.SayOf(heap, Catalogue.AskBuilt);
        if (talk.Farmer.Stage == Stage.AskingTurned) Tending.SayAskTurned(talk, heap);
        Checking.AskAgain(talk, heap);
        Finishing.AskAgain(talk, heap);
    }
}
