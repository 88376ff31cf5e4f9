using HeapText.Agronomy.Heap;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Which method suits a farmer: three questions on rain, water and labour, then the advice.</summary>
internal static class MethodAdvice
{
    private const int DaysOfWeek = 7;

    /// <summary>Begins the questions.</summary>
    public static void Begin(Talk talk)
    {
        talk.OpenSide();
        talk.Ask(Cue.RainWanted);
        AskAgain(talk);
    }

    /// <summary>Says the open question again.</summary>
    public static void AskAgain(Talk talk)
    {
        if (talk.Farmer.Stage == Stage.AskingRain) talk.Say(Catalogue.AskRain);
        if (talk.Farmer.Stage == Stage.AskingWater) talk.Say(Catalogue.AskWater);
        if (talk.Farmer.Stage == Stage.AskingLabour) talk.Say(Catalogue.AskLabour);
    }

    /// <summary>Answers the open question; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading)
    {
        if (talk.Farmer.Side is not { } side) return false;
        var number = reading.BareNumber ?? reading.Intent switch
        {
            Intent.Yes when talk.Farmer.Stage == Stage.AskingWater => 1,
            Intent.No when talk.Farmer.Stage == Stage.AskingWater => 2,
            _ => 0,
        };
        switch (talk.Farmer.Stage, number)
        {
            case (Stage.AskingRain, 1 or 2 or 3):
                talk.Farmer = talk.Farmer with { Side = side with { Rain = (Rain)(number - 1) } };
                talk.Ask(Cue.WaterWanted);
                break;
            case (Stage.AskingWater, 1 or 2):
                talk.Farmer = talk.Farmer with { Side = side with { Water = (Water)(number - 1) } };
                talk.Ask(Cue.LabourWanted);
                break;
            case (Stage.AskingLabour, 1 or 2 or 3):
                Advise(talk, side, (Labour)(number - 1));
                return true;
            default: return false;
        }
        AskAgain(talk);
        return true;
    }

    /// <summary>The method for a new heap of this farmer.</summary>
    public static HeapMethod MethodOf(Talk talk) =>
        talk.Office.MethodOf(talk.Farmer.Method ?? talk.Office.MethodOfGroup(talk.Farmer.Group));

    private static void Advise(Talk talk, SideTalk side, Labour labour)
    {
        var key = MethodChoice.For(new HeapSite(side.Rain, side.Water, labour)).Key;
        var method = talk.Office.Methods[key];
        talk.Farmer = talk.Farmer with { Method = key };
        talk.Say(Catalogue.Method(key), ("turns", new Value.Count("turns", method.Turns)),
            ("early", new Value.Number(method.ReadyLowDays / DaysOfWeek)),
            ("late", new Value.Number((method.ReadyHighDays + DaysOfWeek - 1) / DaysOfWeek)));
        var planned = talk.Farmer.Heaps.FirstOrDefault(heap => heap.Step == HeapStep.Planned);
        var isOnPaper = planned is not null && planned.Method != key && !Stocktaking.IsUnderWay(side.Before);
        if (isOnPaper) Planning.PlanAnew(talk, planned!);
        else if (side.Before == Stage.Gathering) Planning.Plan(talk);
        else talk.CloseSide();
        if (isOnPaper && side.Before is not (Stage.Tending or Stage.Building or Stage.AskingBuilt)) talk.GoBackTo(side);
    }
}
