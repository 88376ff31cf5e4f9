using HeapText.Agronomy.Heap;
using HeapText.Service.Startup;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class MethodSettingsReaderTests
{
    [Fact]
    public void Read_NoSettings_IsTheMethodsOfTheProduct()
    {
        var (methods, faults) = Read();

        Assert.Empty(faults);
        Assert.Equal(HeapMethods.All.Keys.Order(), methods.Keys.Order());
    }

    [Fact]
    public void Read_OwnMethod_StartsFromTheOneItIsLike()
    {
        var (methods, faults) = Read(
            ("hill-heap:Like", "dry-season-pit"), ("hill-heap:CheckDays", ""), ("hill-heap:TurnDays", "3 4  5 12"));

        Assert.Empty(faults);
        var own = methods["hill-heap"];
        Assert.Equal([3, 4, 5, 12], own.TurnDays);
        Assert.Empty(own.CheckDays);
        Assert.Equal(HeapMethods.All["dry-season-pit"].CuringDays, own.CuringDays);
        Assert.Equal("hill-heap", own.Key);
        Assert.Equal(HeapMethods.All["dry-season-pit"].Bounds, own.Bounds);
    }

    [Fact]
    public void Read_KnownMethod_IsChangedWhereSaid()
    {
        var (methods, faults) = Read(("daily-then-weekly:SettleDays", "9"), ("daily-then-weekly:ReadyHighDays", "120"));

        Assert.Empty(faults);
        Assert.Equal((9, 120), (methods["daily-then-weekly"].SettleDays, methods["daily-then-weekly"].ReadyHighDays));
        Assert.Equal([3, 4, 5, 12], methods["daily-then-weekly"].TurnDays);
    }

    [Theory]
    [InlineData("TurnDays", "3 four", "Methods:slow-heap:TurnDays: \"four\" is no day.")]
    [InlineData("TurnDays", "3,4,5", "Methods:slow-heap:TurnDays: \"3,4,5\" is no day.")]
    [InlineData("TurnDays", "", "Methods:slow-heap:TurnDays must be 1 to 20 days.")]
    [InlineData("TurnDays", "9 8", "Methods:slow-heap:TurnDays must rise, each from 1 to 365.")]
    [InlineData("CheckDays", "30", "Methods:slow-heap:CheckDays must come before the first of TurnDays.")]
    [InlineData("SettleDays", "2", "Methods:slow-heap:SettleDays is 2: give 3 to 30.")]
    [InlineData("SettleDays", "-2", "Methods:slow-heap:SettleDays is no whole number.")]
    [InlineData("CuringDays", "181", "Methods:slow-heap:CuringDays is 181: give 0 to 180.")]
    [InlineData("MoreRestDays", "0", "Methods:slow-heap:MoreRestDays is 0: give 1 to 60.")]
    [InlineData("ReadyLowDays", "100", "Methods:slow-heap:ReadyLowDays is 100: give 119 to 700.")]
    [InlineData("ReadyHighDays", "soon", "Methods:slow-heap:ReadyHighDays is no whole number.")]
    [InlineData("Turns", "3", "Methods:slow-heap:Turns is not a setting: use one of Like, ")]
    public void Read_OneBadFigure_NamesIt(string key, string value, string fault)
    {
        var (_, faults) = Read(($"slow-heap:{key}", value));

        Assert.StartsWith(fault, Assert.Single(faults), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("hill-heap:TurnDays", "3 4")] // like none
    [InlineData("hill-heap:Like", "tower")]
    [InlineData("slow-heap:Like", "hot-turned")] // taken
    [InlineData("a-heap-with-a-key-longer-than-forty-letters:Like", "slow-heap")]
    public void Read_MethodWithoutAStart_SaysWhichThereAre(string key, string value)
    {
        var (methods, faults) = Read((key, value));

        Assert.Contains("hot-turned, daily-then-weekly", Assert.Single(faults), StringComparison.Ordinal);
        Assert.Equal(HeapMethods.All.Count, methods.Count);
    }

    [Fact]
    public void Read_ManyFaults_NamesEveryOne()
    {
        var (_, faults) = Read(
            ("slow-heap:SettleDays", "1"), ("slow-heap:Colour", "red"), ("hot-turned:CuringDays", "999"),
            ("hot-turned:TurnDays", "soon"), ("new:Like", "x"));

        Assert.Equal(
            ["Methods:hot-turned", "Methods:hot-turned", "Methods:new", "Methods:slow-heap", "Methods:slow-heap"],
            faults.Select(fault => string.Join(':', fault.Split([':', ' '])[..2])).Order(StringComparer.Ordinal));
    }

    private static (IReadOnlyDictionary<string, HeapMethod> Methods, List<string> Faults) Read(
        params (string Key, string Value)[] settings)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(one =>
                new KeyValuePair<string, string?>($"Methods:{one.Key}", one.Value)))
            .Build();
        var faults = new List<string>();
        return (MethodSettingsReader.Read(configuration.GetSection("Methods"), faults), faults);
    }
}
