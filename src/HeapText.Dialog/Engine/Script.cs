using Stateless;
using Stateless.Graph;

namespace HeapText.Dialog.Engine;

/// <summary>The conversation as one table: in which stage, on which cue, which stage follows.</summary>
public sealed class Script
{
    private static readonly (Stage From, Cue On, Stage To)[] Rules =
    [
        // from                 on                  to
        (Stage.Stranger,        Cue.Invited,        Stage.AskingConsent),
        (Stage.AskingConsent,   Cue.Invited,        Stage.AskingConsent),
        (Stage.AskingConsent,   Cue.Agreed,         Stage.Tending),
        (Stage.AskingConsent,   Cue.Declined,       Stage.Stranger),
        (Stage.AskingHour,      Cue.RodWanted,      Stage.AskingRod),
        (Stage.AskingHeat,      Cue.SmellWanted,    Stage.AskingSmell),
        (Stage.AskingHeat,      Cue.MoistureWanted, Stage.AskingMoisture),
        (Stage.AskingSmell,     Cue.SmellWanted,    Stage.AskingSmell),
        (Stage.AskingSmell,     Cue.MoistureWanted, Stage.AskingMoisture),
        (Stage.AskingMoisture,  Cue.SmellWanted,    Stage.AskingSmell),
        (Stage.AskingMoisture,  Cue.MoistureWanted, Stage.AskingMoisture),
    ];

    /// <summary>What can happen at any time to a farmer who has joined: in a report, a due reminder, a change of
    /// plan.</summary>
    private static readonly (Cue On, Stage To)[] AtAnyTime =
    [
        // on                to
        (Cue.StockWanted,    Stage.AskingStock),
        (Cue.MenuWanted,     Stage.PickingMaterial),
        (Cue.AmountWanted,   Stage.AskingAmount),
        (Cue.MeasureWanted,  Stage.AskingMeasure),
        (Cue.WhichWanted,    Stage.AskingWhich),
        (Cue.StockTooSmall,  Stage.Gathering),
        (Cue.RecipeSent,     Stage.Building),
        (Cue.BuiltWanted,    Stage.AskingBuilt),
        (Cue.HourWanted,     Stage.AskingHour),
        (Cue.RodWanted,      Stage.AskingRod),
        (Cue.HeatWanted,     Stage.AskingHeat),
        (Cue.SmellWanted,    Stage.AskingSmell),
        (Cue.MoistureWanted, Stage.AskingMoisture),
        (Cue.TurningWanted,  Stage.AwaitingTurn),
        (Cue.TurnedWanted,   Stage.AskingTurned),
        (Cue.ReheatWanted,   Stage.AskingReheat),
        (Cue.LookWanted,     Stage.AskingReady),
        (Cue.SproutsWanted,  Stage.AskingSprouts),
        (Cue.CropWanted,     Stage.AskingCrop),
        (Cue.PlantsWanted,   Stage.AskingPlants),
        (Cue.LengthWanted,   Stage.AskingLength),
        (Cue.WidthWanted,    Stage.AskingWidth),
        (Cue.RainWanted,     Stage.AskingRain),
        (Cue.WaterWanted,    Stage.AskingWater),
        (Cue.LabourWanted,   Stage.AskingLabour),
        (Cue.HeapWanted,     Stage.AskingHeap),
        (Cue.Settled,        Stage.Tending),
    ];

    [ThreadStatic] private static Script? _ofThread;

    private readonly StateMachine<Stage, Cue> _machine;
    private Stage _stage;

    private Script()
    {
        _machine = new StateMachine<Stage, Cue>(() => _stage, stage => _stage = stage);
        foreach (var rule in AllRules())
        {
            var from = _machine.Configure(rule.From);
            if (rule.From == rule.To) from.PermitReentry(rule.On);
            else from.Permit(rule.On, rule.To);
        }
    }

    /// <summary>The stage that follows.</summary>
    /// <exception cref="InvalidOperationException">The table has no such move: a fault of the code that fires the
    /// cue.</exception>
    public static Stage Next(Stage from, Cue on)
    {
        var script = _ofThread ??= new Script();
        script._stage = from;
        script._machine.Fire(on);
        return script._stage;
    }

    /// <summary>The cue that leads to a stage at any time; that no question is open where none does.</summary>
    public static Cue CueTo(Stage stage) =>
        AtAnyTime.Where(rule => rule.To == stage).Select(rule => rule.On).FirstOrDefault(Cue.Settled);

    /// <summary>The table drawn as a Mermaid state diagram; what can happen at any time is listed beside it in
    /// words.</summary>
    public static string Drawing()
    {
        var machine = new StateMachine<Stage, Cue>(Stage.Stranger);
        foreach (var (from, on, to) in Rules)
        {
            if (from == to) machine.Configure(from).PermitReentry(on);
            else machine.Configure(from).Permit(on, to);
        }
        return MermaidGraph.Format(machine.GetInfo(), MermaidGraphDirection.LeftToRight);
    }

    /// <summary>The second table as Markdown rows.</summary>
    public static string AtAnyTimeRows() => string.Concat(AtAnyTime.Select(rule => $"| {rule.On} | {rule.To} |\n"));

    private static IEnumerable<(Stage From, Cue On, Stage To)> AllRules()
    {
        var joined = Enum.GetValues<Stage>().Where(s => s is not (Stage.Stranger or Stage.AskingConsent));
        return Rules.Concat(from stage in joined from rule in AtAnyTime select (stage, rule.On, rule.To)).Distinct();
    }
}
