using HeapText.Agronomy.Materials;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Engine;

/// <summary>Stock without typing: pick a role, a material of it, how much, in what; then more, or that is
/// all.</summary>
internal static class StockByRole
{
    /// <summary>Begins to pick; what was told so far stays.</summary>
    public static void Begin(Talk talk)
    {
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { ByRole = true, MenuStep = null, Role = null } };
        Stocktaking.Continue(talk);
    }

    /// <summary>Asks of which role there is some, or some more.</summary>
    public static void Ask(Talk talk)
    {
        talk.Ask(Cue.MenuWanted);
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Role = null } };
        if (talk.Draft.Items.LastOrDefault(item => item is { Amount: not null, Measure: not null }) is not { } last)
            talk.Say(Catalogue.PickRole);
        else
            talk.Say(Catalogue.PickMore,
                ("portions", new Value.Portions([new Portion(last.Material, last.Amount!.Value, last.Measure!)])));
    }

    /// <summary>Says the open question again.</summary>
    public static void AskAgain(Talk talk)
    {
        if (talk.Draft.Role is { } role) AskMaterial(talk, role);
        else Ask(talk);
    }

    /// <summary>Answers which role or which material; false when the text does not.</summary>
    public static bool Answer(Talk talk, Reading reading)
    {
        var isNone = reading.BareNumber == 0 || reading.Intent == Intent.No;
        // "6 wheelbarrows" says how much of something, not which.
        var isPick = reading.BareMeasure is null && reading.BareNumber is > 0 and <= 99 && reading.BareNumber % 1 == 0;
        var number = isPick ? (int)reading.BareNumber!.Value : 0;
        if (talk.Draft.Role is { } role)
        {
            var materials = StepByStep.MaterialsOf(role);
            if (isNone) Ask(talk);
            else if (number >= 1 && number <= materials.Count) Pick(talk, materials[number - 1]);
            else return false;
        }
        else if (isNone) Finish(talk);
        else if (number >= 1 && number <= StepByStep.Roles.Count) PickRole(talk, StepByStep.Roles[number - 1]);
        else return false;
        return true;
    }

    /// <summary>Goes one question back, without losing an amount whose measure is known; false at the
    /// first.</summary>
    public static bool StepBack(Talk talk)
    {
        if (!talk.Draft.ByRole) return false;
        switch (talk.Farmer.Stage)
        {
            case Stage.AskingMeasure when talk.Draft.Items.FirstOrDefault(IsUnmeasured) is { } item:
                Put(talk, item with { Amount = null });
                Stocktaking.Continue(talk);
                return true;
            case Stage.AskingAmount when talk.Draft.WithoutAmount is { } item:
                var others = talk.Draft.Items.Where(other => other != item);
                talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Items = [.. others] } };
                if (MaterialTable.TryFind(item.Material, out var known) && IsChoice(known.Role))
                    AskMaterial(talk, known.Role);
                else Ask(talk);
                return true;
            case Stage.PickingMaterial when talk.Draft.Role is not null:
                Ask(talk);
                return true;
            default: return false;
        }
    }

    /// <summary>True when a further step back stays within the stock.</summary>
    public static bool HasStepBack(Farmer farmer) => farmer.Draft is { ByRole: true } draft
        && (farmer.Stage is Stage.AskingMeasure or Stage.AskingAmount
            || (farmer.Stage == Stage.PickingMaterial && draft.Role is not null));

    private static bool IsUnmeasured(DraftItem item) => item is { Amount: not null, Measure: null };

    private static bool IsChoice(MaterialRole role) => StepByStep.MaterialsOf(role).Count > 1;

    private static void PickRole(Talk talk, MaterialRole role)
    {
        if (IsChoice(role)) AskMaterial(talk, role);
        else Pick(talk, StepByStep.MaterialsOf(role)[0]);
    }

    private static void AskMaterial(Talk talk, MaterialRole role)
    {
        var (question, materials) = StepByStep.Menu(role, talk.OnScreen);
        talk.Ask(Cue.MenuWanted);
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Role = role } };
        talk.Say(question, ("choices", new Value.Choices([.. materials.Select(key => new Value.Material(key))])));
    }

    private static void Pick(Talk talk, string material)
    {
        var item = new DraftItem(material, null, null);
        Put(talk, item);
        Stocktaking.AskAmount(talk, item);
    }

    private static void Put(Talk talk, DraftItem item)
    {
        var others = talk.Draft.Items.Where(other => other.Material != item.Material);
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { Items = [.. others, item] } };
    }

    private static void Finish(Talk talk)
    {
        talk.Farmer = talk.Farmer with { Draft = talk.Draft with { ByRole = false, Role = null } };
        Stocktaking.Continue(talk);
    }
}
