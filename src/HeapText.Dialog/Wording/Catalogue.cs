using HeapText.Agronomy.Heap;

namespace HeapText.Dialog.Wording;

/// <summary>Every message the service can send. Each language's text.yml holds exactly these keys.</summary>
public static class Catalogue
{
    private static readonly List<MessageSpec> Listed = [];

    public static IReadOnlyList<MessageSpec> All => Listed;

    // joining
    public static readonly MessageSpec HowToJoin = General("how-to-join", 1);
    public static readonly MessageSpec NoSuchGroup = General("no-such-group", 1, ("code", SlotKind.Number));
    public static readonly MessageSpec AskConsent =
        General("ask-consent", 2,
        ("group", SlotKind.Name), ("officer", SlotKind.Name), ("languages", SlotKind.LanguageHints));
    public static readonly MessageSpec LanguageHint = General("language-hint", 1);
    public static readonly MessageSpec ConsentRefused = General("consent-refused", 1, ("code", SlotKind.Number));
    public static readonly MessageSpec Welcome = General("welcome", 1, ("group", SlotKind.Name));

    // taking stock
    public static readonly MessageSpec AskStock = General("ask-stock", 1);
    public static readonly MessageSpec AskStockAgain = General("ask-stock-again", 1);
    public static readonly MessageSpec PickBrown = General("pick-brown", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickGreen = General("pick-green", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickManure = General("pick-manure", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickEarth = General("pick-earth", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickExtra = General("pick-extra", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickMineral =
        General("pick-mineral", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickFeed = General("pick-feed", 1, ("choices", SlotKind.MaterialChoices));
    public static readonly MessageSpec PickRole = General("pick-role", 1);
    public static readonly MessageSpec PickMore = General("pick-more", 2, ("portions", SlotKind.Portions));
    public static readonly MessageSpec AskHowMuch = General("ask-how-much", 1, ("material", SlotKind.Material));
    public static readonly MessageSpec AskAmount =
        General("ask-amount", 1, ("measure", SlotKind.Measure), ("material", SlotKind.Material));
    public static readonly MessageSpec AskMeasure =
        General("ask-measure", 1, ("materials", SlotKind.Materials), ("choices", SlotKind.MeasureChoices));
    public static readonly MessageSpec AskWhich =
        General("ask-which", 1, ("word", SlotKind.Words), ("choices", SlotKind.MeantChoices));
    public static readonly MessageSpec WordUnknown =
        General("word-unknown", 1, ("words", SlotKind.Words), ("officer", SlotKind.Name));
    public static readonly MessageSpec WordAdded = General("word-added", 1,
        ("officer", SlotKind.Name), ("word", SlotKind.Words), ("material", SlotKind.Material));
    public static readonly MessageSpec WordKnown = General("word-known", 2,
        ("officer", SlotKind.Name), ("word", SlotKind.Words), ("material", SlotKind.Material));
    public static readonly MessageSpec WordIs = General("word-is", 1,
        ("officer", SlotKind.Name), ("word", SlotKind.Words), ("material", SlotKind.Material));
    public static readonly MessageSpec WordIgnored =
        General("word-ignored", 1, ("officer", SlotKind.Name), ("word", SlotKind.Words));
    public static readonly MessageSpec TookUsual = General("took-usual", 1, ("portions", SlotKind.Portions));
    public static readonly MessageSpec Bring = General("bring", 2, ("portions", SlotKind.Portions));
    public static readonly MessageSpec BringInstead =
        General("bring-instead", 1, ("material", SlotKind.Material), ("materials", SlotKind.Materials));
    public static readonly MessageSpec OrSmallHeap = General("or-small-heap", 1);
    public static readonly MessageSpec BringAnything = General("bring-anything", 1);

    // the recipe
    public static readonly MessageSpec Recipe = OfHeap(
        "recipe", 2, ("rounds", SlotKind.Count), ("portions", SlotKind.Portions), ("water", SlotKind.Buckets));
    public static readonly MessageSpec RecipeFirst =
        OfHeap("recipe-first", 2, ("rounds", SlotKind.Count), ("portions", SlotKind.Portions));
    public static readonly MessageSpec RecipeThen =
        OfHeap("recipe-then", 2, ("portions", SlotKind.Portions), ("water", SlotKind.Buckets));
    public static readonly MessageSpec RecipeDry =
        OfHeap("recipe-dry", 2, ("rounds", SlotKind.Count), ("portions", SlotKind.Portions));
    public static readonly MessageSpec RecipeThenDry = OfHeap("recipe-then-dry", 2, ("portions", SlotKind.Portions));
    public static readonly MessageSpec HeapSize = OfHeap(
        "heap-size", 2, ("width", SlotKind.Metres), ("length", SlotKind.Metres), ("height", SlotKind.Metres));
    public static readonly MessageSpec PitSize = OfHeap(
        "pit-size", 2, ("width", SlotKind.Metres), ("length", SlotKind.Metres), ("height", SlotKind.Metres));
    public static readonly MessageSpec RingSize =
        OfHeap("ring-size", 2, ("width", SlotKind.Metres), ("height", SlotKind.Metres));
    public static readonly MessageSpec StageMaterials = General("stage-materials", 2);
    public static readonly MessageSpec CareBuilding = General("care-building", 2);
    public static readonly MessageSpec CareDust = General("care-dust", 2, ("materials", SlotKind.Materials));
    public static readonly MessageSpec CareAsh = General("care-ash", 1);
    public static readonly MessageSpec CarePit = General("care-pit", 2);
    public static readonly MessageSpec MoreHeaps = General("more-heaps", 1, ("heaps", SlotKind.Count));
    public static readonly MessageSpec LeftOver = General("left-over", 1, ("materials", SlotKind.Materials));
    public static readonly MessageSpec AskBuilt = OfHeap("ask-built", 1);
    public static readonly MessageSpec NotBuilt = OfHeap("not-built", 1);

    // the heap stands
    public static readonly MessageSpec Built = OfHeap("built", 1, ("turns", SlotKind.Count), ("date", SlotKind.Date));
    public static readonly MessageSpec BuiltAlready = OfHeap("built-already", 1);
    public static readonly MessageSpec AskHour = General("ask-hour", 1, ("choices", SlotKind.HourChoices));
    public static readonly MessageSpec HourSet = General("hour-set", 1, ("hour", SlotKind.Hour));
    public static readonly MessageSpec AskRod = General("ask-rod", 1);
    public static readonly MessageSpec RodWood = General("rod-wood", 2);
    public static readonly MessageSpec RodMetal = General("rod-metal", 2);

    // turning and checking
    public static readonly MessageSpec TurnToday =
        OfHeap("turn-today", 1, ("turn", SlotKind.Ordinal), ("turns", SlotKind.Number));
    public static readonly MessageSpec TurnOnceMore = OfHeap("turn-once-more", 1);
    public static readonly MessageSpec TurnLate = OfHeap(
        "turn-late", 2, ("date", SlotKind.Date), ("turn", SlotKind.Ordinal), ("turns", SlotKind.Number));
    public static readonly MessageSpec BringWater = OfHeap("bring-water", 1, ("water", SlotKind.Buckets));
    public static readonly MessageSpec AskTurned = OfHeap("ask-turned", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec AskHeat = OfHeap("ask-heat", 1);
    public static readonly MessageSpec AskHeatWas = OfHeap("ask-heat-was", 1);
    public static readonly MessageSpec AskSmell = OfHeap("ask-smell", 1);
    public static readonly MessageSpec AskMoisture = OfHeap("ask-moisture", 1);
    public static readonly MessageSpec TurnNow = OfHeap("turn-now", 1);
    public static readonly MessageSpec Advice =
        OfHeap("advice", 2, ("cause", SlotKind.Cause), ("actions", SlotKind.Actions));
    public static readonly MessageSpec Finding = OfHeap("finding", 1, ("cause", SlotKind.Cause));
    public static readonly MessageSpec CareFire = OfHeap("care-fire", 1);
    public static readonly MessageSpec TroubleTold = OfHeap("trouble-told", 1, ("officer", SlotKind.Name));
    public static readonly MessageSpec Turned =
        OfHeap("turned", 1, ("turn", SlotKind.Ordinal), ("turns", SlotKind.Number), ("date", SlotKind.Date));
    public static readonly MessageSpec TurnedLast = OfHeap("turned-last", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec TurnedExtra = OfHeap("turned-extra", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec TurnedEarly = OfHeap("turned-early", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec Delayed = OfHeap("delayed", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec LastReminder = OfHeap("last-reminder", 1, ("officer", SlotKind.Name));

    // the heat is over
    public static readonly MessageSpec AskReheat = OfHeap("ask-reheat", 1);
    public static readonly MessageSpec Reheated = OfHeap("reheated", 1);
    public static readonly MessageSpec Curing = OfHeap("curing", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec AskReady = OfHeap("ask-ready", 1);
    public static readonly MessageSpec NotReady = OfHeap("not-ready", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec Ready = OfHeap("ready", 2, ("date", SlotKind.Date));
    public static readonly MessageSpec ReadyYield = OfHeap("ready-yield", 1, ("buckets", SlotKind.Buckets));
    public static readonly MessageSpec ReadyCare = OfHeap("ready-care", 2);
    public static readonly MessageSpec ReadyWasHot = OfHeap("ready-was-hot", 1);
    public static readonly MessageSpec ReadyNotHot = OfHeap("ready-not-hot", 2);
    public static readonly MessageSpec AskSprouts = OfHeap("ask-sprouts", 1);
    public static readonly MessageSpec SproutsGood = OfHeap("sprouts-good", 1);
    public static readonly MessageSpec SproutsPoor = OfHeap("sprouts-poor", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec SproutsNotTried = OfHeap("sprouts-not-tried", 1);

    // which method suits
    public static readonly MessageSpec AskRain = General("ask-rain", 1);
    public static readonly MessageSpec AskWater = General("ask-water", 1);
    public static readonly MessageSpec AskLabour = General("ask-labour", 1);

    // how much a crop needs
    public static readonly MessageSpec AskCrop = General("ask-crop", 1, ("choices", SlotKind.CropChoices));
    public static readonly MessageSpec AskPlants = General("ask-plants", 1, ("crop", SlotKind.Crop));
    public static readonly MessageSpec AskPots = General("ask-pots", 1);
    public static readonly MessageSpec AskLength = General("ask-length", 1, ("crop", SlotKind.Crop));
    public static readonly MessageSpec AskWidth = General("ask-width", 1);
    public static readonly MessageSpec UsePlants = General("use-plants", 1, ("crop", SlotKind.Crop),
        ("each", SlotKind.Measured), ("plants", SlotKind.Number), ("total", SlotKind.Measured));
    public static readonly MessageSpec UseNursery =
        General("use-nursery", 1, ("pots", SlotKind.Count), ("total", SlotKind.Measured));
    public static readonly MessageSpec UseLand = General(
        "use-land", 2, ("crop", SlotKind.Crop), ("total", SlotKind.Measured), ("steps", SlotKind.Count));
    public static readonly MessageSpec UseWorth = General("use-worth", 1, ("money", SlotKind.Money));
    public static readonly MessageSpec UseCare = General("use-care", 2);
    public static readonly MessageSpec UseCareBefore = General("use-care-before", 2);

    // at any time
    public static readonly MessageSpec Urgent = General("urgent", 2);
    public static readonly MessageSpec UrgentTold = General("urgent-told", 1, ("officer", SlotKind.Name));
    public static readonly MessageSpec AskedLongAgo = General("asked-long-ago", 1);
    public static readonly MessageSpec Help = General("help", 1);
    public static readonly MessageSpec PersonTold = General("person-told", 1, ("officer", SlotKind.Name));
    public static readonly MessageSpec Misread = General("misread", 1);
    public static readonly MessageSpec MisreadTold = General("misread-told", 1, ("officer", SlotKind.Name));
    public static readonly MessageSpec Stopped = General("stopped", 1);
    public static readonly MessageSpec StoppedStill = General("stopped-still", 1);
    public static readonly MessageSpec Started = General("started", 1);
    public static readonly MessageSpec LanguageSet = General("language-set", 1);
    public static readonly MessageSpec LanguageUnknown =
        General("language-unknown", 1, ("choices", SlotKind.LanguageHints));
    public static readonly MessageSpec NextNothing = General("next-nothing", 1);
    public static readonly MessageSpec NextReady = General("next-ready", 1);
    public static readonly MessageSpec NextBuild = OfHeap("next-build", 1);
    public static readonly MessageSpec NextTurn =
        OfHeap("next-turn", 1, ("turn", SlotKind.Ordinal), ("turns", SlotKind.Number), ("date", SlotKind.Date));
    public static readonly MessageSpec NextReheat = OfHeap("next-reheat", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec NextSprouts = OfHeap("next-sprouts", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec NextCure = OfHeap("next-cure", 1, ("date", SlotKind.Date));
    public static readonly MessageSpec ReadyWhen =
        OfHeap("ready-when", 1, ("early", SlotKind.Date), ("late", SlotKind.Date));
    public static readonly MessageSpec ReadyNotYet = OfHeap("ready-not-yet", 1);
    public static readonly MessageSpec NoAmounts = General("no-amounts", 1);
    public static readonly MessageSpec EraseTold = General("erase-told", 1, ("officer", SlotKind.Name));
    public static readonly MessageSpec WhichHeap = General("which-heap", 1, ("choices", SlotKind.HeapChoices));
    public static readonly MessageSpec NoHeapStands = General("no-heap-stands", 1);
    public static readonly MessageSpec NewHeap = General("new-heap", 1);
    public static readonly MessageSpec HeapsEnough = General("heaps-enough", 1);

    // screens
    public static readonly MessageSpec LanguageName = General("language-name", 1);
    public static readonly MessageSpec ScreenCode = General("screen-code", 1);
    public static readonly MessageSpec ScreenMore = General("screen-more", 1, ("key", SlotKind.Key));
    public static readonly MessageSpec ScreenBack = General("screen-back", 1, ("key", SlotKind.Key));
    public static readonly MessageSpec ScreenMenu = General("screen-menu", 1, ("key", SlotKind.Key));
    public static readonly MessageSpec ScreenPick = General("screen-pick", 1);
    public static readonly MessageSpec ScreenAlsoText = General("screen-also-text", 1);
    public static readonly MessageSpec ScreenTurned = General("screen-turned", 1);
    public static readonly MessageSpec ScreenStopped = General("screen-stopped", 1);
    public static readonly MessageSpec ScreenStop = General("screen-stop", 1);
    public static readonly MessageSpec ScreenPests = General("screen-pests", 1);
    public static readonly MessageSpec MenuNext = General("menu-next", 1);
    public static readonly MessageSpec MenuBuilt = General("menu-built", 1);
    public static readonly MessageSpec MenuTurned = General("menu-turned", 1);
    public static readonly MessageSpec MenuCheck = General("menu-check", 1);
    public static readonly MessageSpec MenuRecipe = General("menu-recipe", 1);
    public static readonly MessageSpec MenuStock = General("menu-stock", 1);
    public static readonly MessageSpec MenuCrop = General("menu-crop", 1);
    public static readonly MessageSpec MenuMethod = General("menu-method", 1);
    public static readonly MessageSpec MenuHelp = General("menu-help", 1);
    public static readonly MessageSpec MenuSettings = General("menu-settings", 1);
    public static readonly MessageSpec MenuStop = General("menu-stop", 1);
    public static readonly MessageSpec MenuHeat = General("menu-heat", 1);
    public static readonly MessageSpec MenuSmell = General("menu-smell", 1);
    public static readonly MessageSpec MenuSqueeze = General("menu-squeeze", 1);
    public static readonly MessageSpec MenuPests = General("menu-pests", 1);
    public static readonly MessageSpec MenuPerson = General("menu-person", 1);
    public static readonly MessageSpec MenuUrgent = General("menu-urgent", 1);
    public static readonly MessageSpec MenuHow = General("menu-how", 1);
    public static readonly MessageSpec MenuLanguage = General("menu-language", 1);
    public static readonly MessageSpec MenuHour = General("menu-hour", 1);
    public static readonly MessageSpec MenuRod = General("menu-rod", 1);

    /// <summary>What stands on a screen's line of keys, and must be short.</summary>
    public static IReadOnlyList<MessageSpec> Keys { get; } = [LanguageName, ScreenMore, ScreenBack, ScreenMenu];

    /// <summary>Messages that tell how to build a heap.</summary>
    public static IReadOnlyList<MessageSpec> Recipes { get; } = [Recipe, RecipeFirst, RecipeDry];

    private static readonly Dictionary<string, MessageSpec> NeverInByAdvice = Agronomy.Materials.RefusalAdvice.All
        .ToDictionary(key => key, key => General("never-in-" + key, 2, ("materials", SlotKind.Materials)));

    /// <summary>The cautions for use that have a message of their own; the others go together in one.</summary>
    private static readonly Dictionary<string, MessageSpec> UseCautions = new[]
    {
        Agronomy.Use.UseCautions.RawInterval120, Agronomy.Use.UseCautions.RawInterval90,
        Agronomy.Use.UseCautions.Interval120UnlessHot, Agronomy.Use.UseCautions.Interval90UnlessHot,
        Agronomy.Use.UseCautions.NotOnSalad,
    }.ToDictionary(key => key, key => General("use-" + key, 2));

    /// <summary>Causes that a farmer is told; the urgent ones have a message of their own.</summary>
    public static IReadOnlyList<string> Causes { get; } =
        [.. HeapCauses.All.Except(UrgentAdvice.Of.Values.Select(advice => advice.Finding.Cause))];

    /// <summary>Actions that a farmer is asked for in words: not a check, which is asked step by step, and not the
    /// urgent ones, which have a message of their own.</summary>
    public static IReadOnlyList<string> Actions { get; } =
    [
        .. HeapActions.All.Keys.Except(UrgentAdvice.Of.Values.SelectMany(advice => advice.Actions))
            .Except([HeapActions.AskCheck]),
    ];

    /// <summary>Keys of the things that are counted in messages, buckets of water among them.</summary>
    public static IReadOnlyList<string> Counts { get; } = ["rounds", "turns", "heaps", "buckets", "pots", "steps"];

    private static readonly Dictionary<string, MessageSpec> Methods = HeapMethods.All.Keys
        .Where(key => key != HeapMethods.SmallKey)
        .ToDictionary(key => key, key => General("method-" + key, 2, ("turns", SlotKind.Count),
            ("early", SlotKind.Number), ("late", SlotKind.Number)));

    /// <summary>The advice to make heaps by a method that comes with the product.</summary>
    public static MessageSpec Method(string key) => Methods[key];

    /// <summary>What to do with refused materials instead, by the key of the agronomy.</summary>
    public static MessageSpec NeverIn(string instead) => NeverInByAdvice[instead];

    /// <summary>The message of a caution for use; null where it is said together with others.</summary>
    public static MessageSpec? UseCaution(string key) => UseCautions.GetValueOrDefault(key);

    private static MessageSpec General(string key, int segments, params (string Name, SlotKind Kind)[] slots) =>
        List(key, segments, false, slots);

    private static MessageSpec OfHeap(string key, int segments, params (string Name, SlotKind Kind)[] slots) =>
        List(key, segments, true, slots);

    private static MessageSpec List(string key, int segments, bool ofHeap, (string Name, SlotKind Kind)[] slots)
    {
        var spec = new MessageSpec(key, segments, ofHeap, [.. slots.Select(s => new Slot(s.Name, s.Kind))]);
        Listed.Add(spec);
        return spec;
    }
}
