using HeapText.Agronomy.Materials;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>What the farmer has: in free words or step by step, until every amount and measure is known.</summary>
internal static class Stocktaking
{
    /// <summary>Days after which an unanswered question about stock is asked once more.</summary>
    private const int NudgeDays = 3;

    /// <summary>Asks for the stock in free words; on a screen, where typing is slow, by role.</summary>
    public static void AskFreely(Talk talk)
    {
        if (talk.OnScreen)
        {
            StockByRole.Begin(talk);
            return;
        }
        talk.Ask(Cue.StockWanted);
        talk.Farmer = talk.Farmer with { Draft = new StockDraft { NudgeOn = talk.Today.PlusDays(NudgeDays) } };
        talk.Say(Catalogue.AskStock);
    }

    /// <summary>Takes stock for a further heap.</summary>
    public static void BeginNewHeap(Talk talk)
    {
        if (HasEnoughHeaps(talk)) return;
        if (talk.Farmer.Heaps.Any(heap => heap.IsTended)) talk.Say(Catalogue.NewHeap);
        AskFreely(talk);
    }

    /// <summary>Goes on with the stock that is being taken, or takes that of a new heap.</summary>
    public static void BeginOrGoOn(Talk talk)
    {
        if (!IsUnderWay(talk.Farmer.Stage)) BeginNewHeap(talk);
        else if (talk.Farmer.Stage == Stage.Gathering) StockByRole.Begin(talk);
        else AskAgain(talk);
    }

    /// <summary>True in a stage in which what is there is not known or not enough yet.</summary>
    public static bool IsUnderWay(Stage stage) => stage is Stage.AskingStock or Stage.PickingMaterial
        or Stage.AskingAmount or Stage.AskingMeasure or Stage.AskingWhich or Stage.Gathering;

    /// <summary>True, and said, when the phone has as many heaps as it may have.</summary>
    public static bool HasEnoughHeaps(Talk talk)
    {
        if (talk.Farmer.Heaps.Count(heap => heap.IsTended) < Farmer.MostHeaps) return false;
        talk.Say(Catalogue.HeapsEnough);
        return true;
    }

    /// <summary>Takes a text that names materials.</summary>
    public static void Hear(Talk talk, Reading reading)
    {
        if (!reading.NamesMaterials && talk.Farmer.Heaps.Count > 0)
        {
            SayNeverIn(talk, reading.Refused);
            OpenQuestion.AskAgain(talk);
            return;
        }
        if (HasEnoughHeaps(talk)) return;
        talk.LeaveSide();
        Explaining.Ask(talk, reading);
        var isOpen = IsUnderWay(talk.Farmer.Stage) && talk.Farmer.Stage != Stage.AskingStock;
        var planned = talk.Farmer.Heaps.FirstOrDefault(heap => heap.Step == HeapStep.Planned);
        var isUnasked = !isOpen && planned is null && talk.Farmer.Stage != Stage.AskingStock;
        if (isUnasked && talk.Farmer.Heaps.Any(h => h.IsTended)) talk.Say(Catalogue.NewHeap);
        // A list typed first of all is likely the whole; one typed after some were picked is one more.
        var byRole = isOpen && talk.Draft is { ByRole: true, Items.Count: > 0 };
        List<DraftItem> items = isOpen ? [.. talk.Draft.Items]
            : reading.InAddition || Corrects(planned, reading) ? [.. ItemsOf(planned)]
            : [];
        var named = WhichMaterial.Settle(reading, [.. talk.Draft.Missing.Select(m => m.Material),
            .. isOpen ? talk.Draft.Items.Select(i => i.Material) : planned?.Stock.Select(p => p.Material) ?? []]);
        foreach (var one in named.Where(n => n.Choices.Count == 0))
            items = Merge(talk, items, one, reading.InAddition);
        talk.Farmer = talk.Farmer with
        {
            Draft = new StockDraft
            {
                Items = items,
                Refused = reading.Refused,
                Missing = isOpen ? talk.Draft.Missing : [],
                MenuStep = isOpen ? talk.Draft.MenuStep : null,
                Unsure =
                [
                    .. isOpen ? talk.Draft.Unsure : [],
                    .. named.Where(n => n.Choices.Count > 0).Select(n => new UnsureItem(
                        n.Word, n.Choices, n.Amount, n.Measure, reading.InAddition)),
                ],
                ByRole = byRole,
            },
        };
        Continue(talk);
    }

    /// <summary>Answers the open question about stock; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading) => talk.Farmer.Stage switch
    {
        Stage.AskingStock when reading.BareNumber == 1 => Then(() => OpenMenu(talk, 0)),
        Stage.PickingMaterial when talk.Draft.ByRole => StockByRole.Answer(talk, reading),
        Stage.PickingMaterial => Pick(talk, reading),
        Stage.AskingAmount => HearAmount(talk, reading),
        Stage.AskingMeasure => HearMeasure(talk, reading),
        Stage.Gathering when talk.Draft.MakesSmallHeap && reading.BareNumber == 2 =>
            Then(() => Planning.PlanSmall(talk)),
        Stage.Gathering when reading.Intent == Intent.Yes || reading.BareNumber == 1 => Then(() => Brought(talk)),
        _ => false,
    };

    /// <summary>Asks the open question about stock again.</summary>
    public static void AskAgain(Talk talk)
    {
        switch (talk.Farmer.Stage)
        {
            case Stage.AskingStock when talk.OnScreen: StockByRole.Begin(talk); break;
            case Stage.AskingStock: talk.Say(Catalogue.AskStock); break;
            case Stage.PickingMaterial when talk.Draft.ByRole: StockByRole.AskAgain(talk); break;
            case Stage.PickingMaterial: OpenMenu(talk, talk.Draft.MenuStep ?? 0); break;
            case Stage.AskingAmount or Stage.AskingMeasure or Stage.AskingWhich: Continue(talk); break;
            case Stage.Gathering: Planning.SayWhatToBring(talk); break;
        }
    }

    /// <summary>An answer could not be read: takes a usual value and says so, rather than asking for ever.</summary>
    /// <returns>False when no such question is open.</returns>
    public static bool TakeUsual(Talk talk)
    {
        if (talk.Farmer.Stage == Stage.AskingMeasure) SetMeasures(talk, null);
        else if (talk.Farmer.Stage == Stage.AskingAmount && talk.Draft.WithoutAmount is { } item)
            SetAmount(talk, item, UsualAmount, item.Measure ?? StepByStep.UsualMeasure(item.Material), taken: true);
        else return false;
        return true;
    }

    /// <summary>Asks once more for stock that was begun and left.</summary>
    public static void Nudge(Talk talk)
    {
        if (talk.Draft.Missing.Count > 0)
        {
            talk.Ask(Cue.StockTooSmall);
            Planning.SayWhatToBring(talk);
        }
        else if (talk.Draft is { ByRole: true, Items.Count: > 0 }) Continue(talk);
        else AskFreely(talk);
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { NudgeOn = null } };
    }

    private const decimal UsualAmount = 1;

    /// <summary>Adds one thing to the stock being taken.</summary>
    public static void Add(Talk talk, ReadMaterial named, bool inAddition = false) => talk.Farmer = talk.Farmer with
    {
        Draft = talk.Draft with { Items = Merge(talk, [.. talk.Draft.Items], named, inAddition) },
    };

    /// <summary>Goes on after something was added that the farmer was not asked for: the step of the numbered path that
    /// is open stays open.</summary>
    public static void ContinueBesideSteps(Talk talk)
    {
        if (talk.Farmer.Stage == Stage.PickingMaterial && talk.Draft.MenuStep is { } step)
            talk.Farmer = talk.Farmer with { Draft = talk.Draft with { MenuStep = step - 1 } };
        Continue(talk);
    }

    private static bool Then(Action act)
    {
        act();
        return true;
    }

    /// <summary>True when a text puts some, but not all, of what a recipe was made of right.</summary>
    private static bool Corrects(HeapRecord? planned, Reading reading) =>
        planned is not null && reading.Materials.Count < planned.Stock.Count
        && reading.Materials.All(named => planned.Stock.Any(portion => portion.Material == named.Material));

    private static IEnumerable<DraftItem> ItemsOf(HeapRecord? planned) =>
        planned?.Stock.Select(p => new DraftItem(p.Material, p.Amount, p.Measure)) ?? [];

    /// <summary>Adds what was named. A material that was asked for, or is said to come on top, adds to what is there,
    /// unless the text tells the total; else the new amount replaces the old one.</summary>
    private static List<DraftItem> Merge(Talk talk, List<DraftItem> items, ReadMaterial named, bool inAddition)
    {
        var fresh = new DraftItem(named.Material, named.Amount, named.Measure);
        var missing = talk.Draft.Missing.FirstOrDefault(m => m.Material == named.Material);
        var had = items.FirstOrDefault(i => i.Material == named.Material)?.Amount ?? 0;
        var adds = inAddition || (missing is not null && !(had > 0 && named.Amount >= had + missing.Amount));
        var same = items.FindIndex(i => i.Material == named.Material && (!adds || i.Measure == named.Measure));
        if (same < 0) items.Add(fresh);
        else if (adds && items[same].Amount is { } before && named.Amount is { } more)
            items[same] = fresh with { Amount = before + more };
        else
            items[same] = fresh with
            {
                Amount = fresh.Amount ?? items[same].Amount,
                Measure = fresh.Measure ?? items[same].Measure,
            };
        return items;
    }

    /// <summary>Asks for the first thing that is not known, or works out the recipe when all is.</summary>
    public static void Continue(Talk talk)
    {
        if (talk.Draft.Refused.Count > 0)
        {
            SayNeverIn(talk, talk.Draft.Refused);
            talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Refused = [] } };
        }
        var draft = talk.Draft with { NudgeOn = talk.Today.PlusDays(NudgeDays) };
        talk.Farmer = talk.Farmer with { Draft = draft };
        var unmeasured = draft.Items.Where(i => i is { Amount: not null, Measure: null }).ToList();
        if (draft.Unsure.Count > 0) WhichMaterial.Ask(talk);
        else if (draft is { Items.Count: 0, MenuStep: null, ByRole: false }) AskFreely(talk);
        else if (unmeasured.Count > 0) AskMeasure(talk, [.. unmeasured.Select(i => i.Material)]);
        else if (draft.WithoutAmount is { } item) AskAmount(talk, item);
        else if (draft.ByRole) StockByRole.Ask(talk);
        else if (draft.MenuStep is { } step && step + 1 < StepByStep.Count) OpenMenu(talk, step + 1);
        else if (draft.Items.Count == 0) AskFreely(talk);
        else Planning.Plan(talk);
    }

    public static void SayNeverIn(Talk talk, IReadOnlyList<string> materials)
    {
        foreach (var alike in materials.GroupBy(InsteadOf))
            talk.Say(Catalogue.NeverIn(alike.Key), ("materials", new Value.Materials([.. alike])));
    }

    private static string InsteadOf(string material) =>
        MaterialTable.TryFind(material, out var known) && known.Refusal is { } refusal
            ? refusal.Instead
            : throw new ArgumentException($"{material} is not refused", nameof(material));

    private static void AskMeasure(Talk talk, IReadOnlyList<string> materials)
    {
        talk.Ask(Cue.MeasureWanted);
        var measures = StepByStep.MeasuresOffered(materials[0], talk.OnScreen);
        talk.Say(Catalogue.AskMeasure, ("materials", new Value.Materials(materials)),
            ("choices", new Value.Choices([.. measures.Select(key => new Value.Measure(key))])));
    }

    /// <summary>Asks how much of a material there is. Picked by role, its measure is asked after.</summary>
    public static void AskAmount(Talk talk, DraftItem item)
    {
        talk.Ask(Cue.AmountWanted);
        var material = ("material", (Value)new Value.Material(item.Material));
        if (talk.Draft.ByRole && item.Measure is null) talk.Say(Catalogue.AskHowMuch, material);
        else
            talk.Say(Catalogue.AskAmount,
                ("measure", new Value.Measure(item.Measure ?? StepByStep.UsualMeasure(item.Material))), material);
    }

    private static void OpenMenu(Talk talk, int step)
    {
        var (question, materials) = StepByStep.Menu(step);
        talk.Ask(Cue.MenuWanted);
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { MenuStep = step } };
        talk.Say(question, ("choices", new Value.Choices([.. materials.Select(key => new Value.Material(key))])));
    }

    private static bool Pick(Talk talk, Reading reading)
    {
        var step = talk.Draft.MenuStep ?? 0;
        var offered = StepByStep.Menu(step).Materials;
        if (reading.BareNumber is > 0 and var number && number <= offered.Count && number % 1 == 0)
        {
            var item = new DraftItem(offered[(int)number - 1], null, null);
            var others = talk.Draft.Items.Where(i => i.Material != item.Material);
            talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Items = [.. others, item] } };
            AskAmount(talk, item);
            return true;
        }
        if (reading.BareNumber != 0 && reading.Intent != Intent.No) return false;
        if (step + 1 < StepByStep.Count) OpenMenu(talk, step + 1);
        else
        {
            talk.Farmer = talk.Farmer with { Draft = talk.Draft with { MenuStep = null } };
            Continue(talk);
        }
        return true;
    }

    private static bool HearAmount(Talk talk, Reading reading)
    {
        if (talk.Draft.WithoutAmount is not { } item || reading.BareNumber is not { } amount) return false;
        if (amount < 0) return false;
        if (amount == 0)
        {
            var left = talk.Draft.Items.Where(i => i != item);
            talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Items = [.. left] } };
            Continue(talk);
            return true;
        }
        var usual = talk.Draft.ByRole ? null : StepByStep.UsualMeasure(item.Material);
        SetAmount(talk, item, amount, reading.BareMeasure ?? item.Measure ?? usual, taken: false);
        return true;
    }

    private static bool HearMeasure(Talk talk, Reading reading)
    {
        var lacking = talk.Draft.Items.FirstOrDefault(i => i is { Amount: not null, Measure: null });
        if (lacking is null) return false;
        var measure = reading.BareMeasure;
        var offered = StepByStep.MeasuresOf(lacking.Material);
        if (measure is null && reading.BareNumber is > 0 and var number && number <= offered.Count && number % 1 == 0)
            measure = offered[(int)number - 1];
        if (measure is null) return false;
        SetMeasures(talk, measure);
        return true;
    }

    private static void SetAmount(Talk talk, DraftItem item, decimal amount, string? measure, bool taken)
    {
        var known = item with { Amount = amount, Measure = measure };
        Replace(talk, i => i == item ? known : i);
        if (taken) SayTaken(talk, [known]);
        Continue(talk);
    }

    /// <summary>Sets the measure of every item that lacks one; null takes each material's usual measure and says
    /// so.</summary>
    private static void SetMeasures(Talk talk, string? measure)
    {
        var lacking = talk.Draft.Items.Where(i => i is { Amount: not null, Measure: null }).ToList();
        DraftItem Known(DraftItem item) => item with { Measure = measure ?? StepByStep.UsualMeasure(item.Material) };
        Replace(talk, i => lacking.Contains(i) ? Known(i) : i);
        if (measure is null) SayTaken(talk, [.. lacking.Select(Known)]);
        Continue(talk);
    }

    private static void SayTaken(Talk talk, IReadOnlyList<DraftItem> items)
    {
        foreach (var item in items)
            talk.Say(Catalogue.TookUsual,
                ("portions", new Value.Portions([new Portion(item.Material, item.Amount!.Value, item.Measure!)])));
    }

    private static void Replace(Talk talk, Func<DraftItem, DraftItem> change) => talk.Farmer = talk.Farmer with
    {
        Draft = talk.Draft with { Items = [.. talk.Draft.Items.Select(change)] },
    };

    /// <summary>The farmer has brought what was lacking.</summary>
    private static void Brought(Talk talk)
    {
        List<DraftItem> items = [.. talk.Draft.Items];
        foreach (var portion in talk.Draft.Missing)
            items = Merge(talk, items, new ReadMaterial(portion.Material, portion.Amount, portion.Measure), true);
        talk.Farmer = talk.Farmer with { Draft = new StockDraft { Items = items } };
        Continue(talk);
    }
}
