namespace HeapText.Dialog.Engine;

/// <summary>Which question to the farmer is open. The numbers are stored: add new stages at the end.</summary>
public enum Stage
{
    /// <summary>The number has not joined.</summary>
    Stranger = 0,
    AskingConsent = 1,
    AskingStock = 2,
    PickingMaterial = 3,
    AskingAmount = 4,
    AskingMeasure = 5,

    /// <summary>The stock makes no heap; the farmer is fetching what is lacking.</summary>
    Gathering = 6,

    /// <summary>The farmer has the recipe and is building.</summary>
    Building = 7,
    AskingHour = 8,
    AskingRod = 9,

    /// <summary>No question is open.</summary>
    Tending = 10,
    AskingHeat = 11,
    AskingSmell = 12,
    AskingMoisture = 13,

    /// <summary>The farmer was told to turn and has not said that it is done.</summary>
    AwaitingTurn = 14,
    AskingTurned = 15,
    AskingReheat = 16,
    AskingReady = 17,
    AskingHeap = 18,

    /// <summary>It was asked whether the planned heap stands by now.</summary>
    AskingBuilt = 19,

    /// <summary>Which crop the compost is for.</summary>
    AskingCrop = 20,

    /// <summary>How many plants or holes.</summary>
    AskingPlants = 21,

    /// <summary>How long the land is.</summary>
    AskingLength = 22,

    /// <summary>How wide the land is.</summary>
    AskingWidth = 23,

    /// <summary>How many of the seeds sown in the compost grew.</summary>
    AskingSprouts = 24,

    /// <summary>How much rain is to come, for the choice of a method.</summary>
    AskingRain = 25,

    /// <summary>Whether water is near.</summary>
    AskingWater = 26,

    /// <summary>How often the farmer can turn.</summary>
    AskingLabour = 27,

    /// <summary>Which of several materials a word of the stock means.</summary>
    AskingWhich = 28,
}

/// <summary>What happened in the talk and moves it on.</summary>
public enum Cue
{
    /// <summary>A group's code came from a number that has not joined.</summary>
    Invited,
    Agreed,
    Declined,

    /// <summary>Stock is wanted, in free words.</summary>
    StockWanted,

    /// <summary>Stock is wanted from the next menu.</summary>
    MenuWanted,
    AmountWanted,
    MeasureWanted,
    WhichWanted,

    /// <summary>The stock was worked out and makes no heap.</summary>
    StockTooSmall,

    /// <summary>The stock was worked out and the recipe sent.</summary>
    RecipeSent,
    BuiltWanted,
    HourWanted,
    RodWanted,
    HeatWanted,
    SmellWanted,
    MoistureWanted,
    TurningWanted,

    /// <summary>A turning is late; it is asked whether it was done.</summary>
    TurnedWanted,
    ReheatWanted,
    LookWanted,
    SproutsWanted,
    CropWanted,
    PlantsWanted,
    LengthWanted,
    WidthWanted,
    RainWanted,
    WaterWanted,
    LabourWanted,

    /// <summary>It is not clear which heap was meant.</summary>
    HeapWanted,

    /// <summary>The open question is settled, or was dropped, and no other follows.</summary>
    Settled,
}
