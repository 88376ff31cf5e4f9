using HeapText.Agronomy.Heap;
using HeapText.Dialog.Replies;
using HeapText.Dialog.Wording;

namespace HeapText.Dialog.Screens;

/// <summary>A numbered menu: where back leads, what stands above the choices, and the choices.</summary>
/// <param name="Parent">The view that back leads to.</param>
/// <param name="Title">A message that asks; null for none.</param>
/// <param name="Choices">By number, from 1. Where the title itself lists them they have no label.</param>
internal sealed record ScreenMenu(ScreenView Parent, MessageSpec? Title, IReadOnlyList<ScreenChoice> Choices)
{
    private static readonly Dictionary<ScreenView, ScreenMenu> Menus = new()
    {
        // A choice keeps its number whatever the farmer has, so that it can be learnt.
        [ScreenView.Menu] = new(ScreenView.Question, null,
        [
            Means(Catalogue.MenuNext, Intent.Next),
            Means(Catalogue.MenuBuilt, Intent.Built),
            Means(Catalogue.MenuTurned, Intent.Turned),
            Opens(Catalogue.MenuCheck, ScreenView.Check),
            Means(Catalogue.MenuRecipe, Intent.Amounts),
            Begins(Catalogue.MenuStock, "stock"),
            Begins(Catalogue.MenuCrop, "crop"),
            Begins(Catalogue.MenuMethod, "method"),
            Opens(Catalogue.MenuHelp, ScreenView.Help),
            Opens(Catalogue.MenuSettings, ScreenView.Settings),
            Opens(Catalogue.MenuStop, ScreenView.Stop),
        ]),
        [ScreenView.Check] = new(ScreenView.Menu, null,
        [
            Opens(Catalogue.MenuHeat, ScreenView.Heat),
            Opens(Catalogue.MenuSmell, ScreenView.Smell),
            Opens(Catalogue.MenuSqueeze, ScreenView.Squeeze),
            Opens(Catalogue.MenuPests, ScreenView.Pests),
        ]),
        [ScreenView.Heat] = new(ScreenView.Check, Catalogue.AskHeat,
            [.. Enum.GetValues<Heat>().Select(heat => Tells(new ReadCheck { Heat = heat }))]),
        [ScreenView.Smell] = new(ScreenView.Check, Catalogue.AskSmell,
            [.. Enum.GetValues<Smell>().Select(smell => Tells(new ReadCheck { Smell = smell }))]),
        [ScreenView.Squeeze] = new(ScreenView.Check, Catalogue.AskMoisture,
        [
            .. Enum.GetValues<Moisture>().Select(moisture => Tells(new ReadCheck { Moisture = moisture })),
            Opens(null, ScreenView.Check),
        ]),
        [ScreenView.Pests] = new(ScreenView.Check, Catalogue.ScreenPests,
            [.. Enum.GetValues<Pests>().Select(pests => Tells(new ReadCheck { Pests = pests }))]),
        [ScreenView.Help] = new(ScreenView.Menu, null,
        [
            Means(Catalogue.MenuHow, Intent.Help),
            Means(Catalogue.MenuPerson, Intent.Person),
            new(Catalogue.MenuUrgent) { Means = new Reading { Intent = Intent.Unknown, Urgent = true } },
        ]),
        [ScreenView.Settings] = new(ScreenView.Menu, null,
        [
            Opens(Catalogue.MenuLanguage, ScreenView.Languages),
            Begins(Catalogue.MenuHour, "hour"),
            Begins(Catalogue.MenuRod, "rod"),
        ]),
        [ScreenView.Stop] = new(ScreenView.Menu, Catalogue.ScreenStop,
            [Means(null, Intent.Stop), Opens(null, ScreenView.Menu)]),
    };

    /// <summary>The menu of a view; null for one that is none, or whose choices are not fixed.</summary>
    public static ScreenMenu? Of(ScreenView view) => Menus.GetValueOrDefault(view);

    private static ScreenChoice Means(MessageSpec? label, Intent intent) =>
        new(label) { Means = new Reading { Intent = intent } };

    private static ScreenChoice Tells(ReadCheck check) =>
        new(null) { Means = new Reading { Intent = Intent.Check, Check = check } };

    private static ScreenChoice Opens(MessageSpec? label, ScreenView view) => new(label) { Opens = view };

    private static ScreenChoice Begins(MessageSpec? label, string talk) => new(label) { Begins = talk };
}

/// <summary>A choice of a menu, and one of what it does.</summary>
/// <param name="Label">Its words; null where the menu's title lists it.</param>
internal sealed record ScreenChoice(MessageSpec? Label)
{
    /// <summary>Stands for a text that says the same.</summary>
    public Reading? Means { get; init; }

    /// <summary>Opens another view.</summary>
    public ScreenView? Opens { get; init; }

    /// <summary>Begins something that is asked for by a word of its own: "stock", or one of the answers to
    /// "talk".</summary>
    public string? Begins { get; init; }
}
