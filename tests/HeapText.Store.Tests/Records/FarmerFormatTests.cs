using HeapText.Agronomy.Heap;
using HeapText.Agronomy.Materials;
using HeapText.Dialog.Engine;
using HeapText.Dialog.Screens;
using HeapText.Dialog.Wording;
using HeapText.Store.Records;
using NodaTime;

namespace HeapText.Store.Tests.Records;

public sealed class FarmerFormatTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);
    private static readonly LocalDate Day = new(2026, 3, 2);
    private static readonly Portion Dung = new("cow-dung", 2.5m, "bucket");

    internal static readonly HeapRecord Heap = new()
    {
        Number = 2,
        Stock = [new Portion("maize-stover", 20, "wheelbarrow"), Dung],
        Plan = new HeapPlan
        {
            Rounds = 5,
            PerRound = [Dung],
            WaterBucketsPerRound = 1.5m,
            Width = 1.2,
            Length = 1.4,
            Height = 1,
            Cautions = ["lifting"],
            LeftOver = ["wood-ash"],
        },
        Step = HeapStep.Turning,
        Due = Day.PlusDays(3),
        Prompts = 1,
        PromptedOn = Day.PlusDays(3),
        BuiltOn = Day,
        TurnedOn = [Day.PlusDays(3)],
        Check = new HeapCheck { On = Day, Heat = Heat.Warm, Smell = Smell.Sour, Moisture = Moisture.Dry },
        Method = "daily-then-weekly",
        LastTurned = Day.PlusDays(3),
        WasHot = true,
    };

    internal static readonly Farmer Full = new()
    {
        Subject = "subject",
        Concern = new Concern { Reason = ConcernReason.Person, Since = Noon, Others = [ConcernReason.Use] },
        Group = 41,
        Line = "lake",
        Language = "sw",
        ConsentAt = Noon,
        Stage = Stage.AskingHeap,
        Stopped = true,
        Hour = 7,
        Zone = "Africa/Nairobi",
        Rod = Rod.Metal,
        Heaps = [Heap],
        TalkOf = 2,
        Misreadings = 1,
        Draft = new StockDraft
        {
            Items = [new DraftItem("sawdust", 4, null)],
            Refused = ["glass"],
            MenuStep = 1,
            Missing = [Dung],
            Substitutes = ["goat-manure"],
            NudgeOn = Day,
        },
        MessagesMade = 17,
        LastTurnedAway = Noon,
        AskedAt = Noon,
        Report = new HeapReport { Heaps = [1, 2], Turned = true, DaysAgo = 1, Heat = Heat.Hot, Pests = Pests.Rats },
        HeapsPlanned = 2,
        InvitedTo = 42,
        LanguageChosen = true,
    };

    /// <summary>Members that came after the fixture, at their most: checks of two months, three pieces of
    /// advice.</summary>
    internal static readonly Farmer Later = Full with
    {
        Heaps =
        [
            Heap with
            {
                EarlierChecks =
                [
                    .. Enumerable.Range(1, 20).Select(day => new HeapCheck
                    {
                        On = Day.PlusDays(day),
                        Heat = Heat.Hot,
                        Smell = Smell.Earthy,
                        Moisture = Moisture.Good,
                        Pests = Pests.Flies,
                    }),
                ],
                CheckOn = Day.PlusDays(9),
                Advised =
                [
                    .. Enumerable.Range(1, 3).Select(day => new HeapAdvised
                    {
                        On = Day.PlusDays(day),
                        Actions = [HeapActions.AddDry, HeapActions.KeepRainOff],
                    }),
                ],
                Outlook = new HeapOutlook
                {
                    WaterLitres = 60,
                    ReadyFrom = Day.PlusDays(60),
                    ReadyTo = Day.PlusDays(90),
                    YieldBuckets = 12,
                    DaysAbove55 = 14,
                },
            },
        ],
        Draft = Full.Draft! with
        {
            MakesSmallHeap = true,
            Unsure = [new UnsureItem("grass", ["dry-grass", "fresh-grass"], 3, "sack", true)],
            ByRole = true,
            Role = MaterialRole.Feed,
        },
        Screen = new ScreenTalk
        {
            Session = long.MinValue,
            Step = 31,
            At = Noon,
            View = ScreenView.Closed,
            Page = 2,
            Ends = true,
            Asked = Stage.AskingMeasure,
            AskedOf = 2,
        },
        Side = new SideTalk
        {
            Before = Stage.AskingHeat,
            TalkOf = 2,
            Crop = "maize",
            Length = 20,
            Rain = Rain.Heavy,
            Water = Water.Far,
        },
        Method = "dry-season-pit",
        UnknownWords = [new UnknownWord("zorbix", 3, "sack", 1)],
    };

    [Fact]
    public void Unpack_LaterMembers_AreUnchanged() =>
        Assert.Equivalent(Later, RecordFormat.Unpack<Farmer>(RecordFormat.Pack(Later)), strict: true);

    [Fact]
    public void Unpack_AnswerBeingRead_IsUnchanged()
    {
        var reading = Full with { Screen = Later.Screen! with { View = ScreenView.Question, Reading = ["a", "b"] } };

        Assert.Equivalent(reading, RecordFormat.Unpack<Farmer>(RecordFormat.Pack(reading)), strict: true);
    }

    [Fact]
    public void Pack_HeapWithAllItsChecksAndAdvice_StaysWithinAKilobyte() =>
        Assert.InRange(RecordFormat.Pack(Later).Length, 1, 1024);

    [Fact]
    public void Unpack_FullFarmer_IsUnchanged()
    {
        var back = RecordFormat.Unpack<Farmer>(RecordFormat.Pack(Full));

        Assert.Equivalent(Full, back, strict: true);
    }

    [Fact]
    public void Unpack_FixtureOfFormat1Farmer_StaysReadable()
    {
        var packed = File.ReadAllBytes(FixtureFiles.Of("records", "format-1-farmer", ".bin")[0]);

        Assert.Equivalent(Full, RecordFormat.Unpack<Farmer>(packed), strict: true);
    }
}
