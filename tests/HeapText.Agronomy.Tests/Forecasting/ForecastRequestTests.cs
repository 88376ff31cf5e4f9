using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Forecasting;

public class ForecastRequestTests
{
    private static readonly ForecastRequest Heap = new() { Parts = [new("cow-dung", 100)] };

    public static TheoryData<string, ForecastRequest> Faulty => new()
    {
        { "parts: must hold at least one part", new ForecastRequest { Parts = [] } },
        { "parts: must hold more than 0 kg of dry matter together", With(new("cow-dung", 0)) },
        { "parts[0].material: is no known material", With(new("gravel", 1)) },
        { "parts[0].material: never goes into a heap", With(new("plastic", 1)) },
        { "parts[0].massKg: must be 0 or more", With(new("cow-dung", double.NaN)) },
        {
            "parts[0].nitrogenPercent: must be given, with two of carbonPercent, nitrogenPercent and cn",
            With(new(null, 1, new GivenFigures { MoisturePercent = 50 }))
        },
        { "waterLitres: must be 0 or more", Heap with { WaterLitres = -1 } },
        { "volumeLitres: must be from 1 to 1000000", Heap with { VolumeLitres = 0 } },
        {
            "dimensions.heightM: must be from 0.1 to 1000 metres",
            Heap with { Dimensions = new HeapDimensions(1, 1, 0) }
        },
        { "ambientC: must be from -10 to 45", Heap with { AmbientC = double.NaN } },
        { "days: must be from 1 to 365", Heap with { Days = 366 } },
        { "turnDays[1]: must be from 1 to 365", Heap with { TurnDays = [3, 0] } },
        { "checks[0].day: must be from 0 to 365", Heap with { Checks = [new FieldCheck(-1, null, null)] } },
    };

    [Theory]
    [MemberData(nameof(Faulty))]
    public void Check_OfARequestThatCannotBe_NamesTheField(string fault, ForecastRequest request) =>
        Assert.Equal(fault, request.Check()?.ToString());

    [Fact]
    public void Check_OfAnOrdinaryRequest_FindsNothing() => Assert.Null(Heap.Check());

    [Fact]
    public void Density_NotKnown_IsNotNeededBesideAVolume()
    {
        var given = new GivenFigures { CarbonPercent = 40, NitrogenPercent = 2, MoisturePercent = 50 };

        Assert.Null((With(new ForecastPart(null, 1, given)) with { VolumeLitres = 5 }).Check());
    }

    [Fact]
    public void TurnDays_NotGiven_AreThoseOfTheUsualMethod() => Assert.Equal([3, 4, 5, 12], Heap.TurnDays);

    // Bulk density of cow dung in materials.csv: 860 kg/m3.
    [Fact]
    public void Measured_OfBuckets_WeighsByDensity()
    {
        var (parts, _) = ForecastParts.Measured([new StockItem("cow-dung", 10, "bucket")], Measures.Default);

        Assert.Equal(172, parts!.Single().MassKg, 9);
    }

    [Fact]
    public void Matching_ARecipesOwnMass_KeepsDryAndWater()
    {
        var (parts, _) = ForecastParts.Matching([new("cow-dung", 100), new("rice-straw", 50)], 40, 180, 60);

        Assert.Equal(72, parts!.Sum(part => part.DryKg), 6);
        Assert.Equal(140, parts!.Sum(part => part.MassKg), 6);
    }

    [Fact]
    public void Matching_AMassBelowTheWater_IsAFault() =>
        Assert.Equal("massKg", ForecastParts.Matching([new("cow-dung", 100)], 90, 100, 50).Fault?.Field);

    private static ForecastRequest With(ForecastPart part) => new() { Parts = [part] };
}
