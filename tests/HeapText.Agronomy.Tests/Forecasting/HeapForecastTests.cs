using HeapText.Agronomy.Forecasting;
using HeapText.Agronomy.Heap;

namespace HeapText.Agronomy.Tests.Forecasting;

public class HeapForecastTests
{
    /// <summary>About 2 m3 of straw, weeds, goat manure and a little soil, watered to 55 %.</summary>
    private static readonly ForecastRequest Farm = new()
    {
        Parts = [new("rice-straw", 52), new("green-weeds", 94), new("goat-manure", 187), new("topsoil", 25)],
        WaterLitres = 75,
    };

    // Plan 8-14 weeks, common advice from memory; volume left 40-60 % of dung and straw, from memory.
    [Fact]
    public void Forecast_OfAnOrdinaryHeap_AgreesWithPlanningValues()
    {
        var forecast = HeapForecast.Run(Farm);

        Assert.InRange(forecast.PeakC, 50, 70);
        Assert.InRange(forecast.PeakDay, 2, 10);
        Assert.InRange(forecast.ReadyDay.Likely!.Value, 8 * 7, 14 * 7);
        Assert.InRange(forecast.Days[90].VolumeLitres / forecast.Days[0].VolumeLitres, 0.4, 0.6);
    }

    // Volume left 25-40 % of fluffy leaves and stover, from memory; half is allowed above.
    [Fact]
    public void Volume_OfAFluffyHeap_FallsFurther()
    {
        var fluffy = HeapForecast.Run(new ForecastRequest
        {
            Parts = [new("maize-stover", 60), new("green-weeds", 90), new("fresh-grass", 60)],
            WaterLitres = 60,
        });

        Assert.InRange(fluffy.Days[90].VolumeLitres / fluffy.Days[0].VolumeLitres, 0.25, 0.43);
    }

    // Umsakul, Dissara & Srimuang 2010: alone it reached only 40 C.
    [Fact]
    public void Heap_OfWaterHyacinthAlone_StaysAroundFortyDegrees() =>
        Assert.InRange(Peak(new ForecastPart("water-hyacinth", 240)), 25, 42);

    // Common practice, no source.
    [Fact]
    public void Heap_OfDryStrawAlone_DoesNotHeat() => Assert.InRange(Peak(new ForecastPart("rice-straw", 100)), 25, 27);

    [Fact]
    public void Heap_OfSoilAndStone_DoesNotHeat() =>
        Assert.InRange(Peak(new("topsoil", 300), new("rock-dust", 300)), 25, 27);

    // Müller-Sämann 1986 via FAO Soils Bulletin 80: at least 1 m3.
    [Fact]
    public void Heap_OfATenthOfACubicMetre_HardlyHeats()
    {
        var small = Farm with
        {
            Parts = [.. Farm.Parts.Select(part => part with { MassKg = part.MassKg / 20 })],
            WaterLitres = Farm.WaterLitres / 20,
        };

        Assert.True(HeapForecast.Run(small).PeakC < 40);
    }

    [Fact]
    public void Heap_TooDry_GetsWaterAtTurnings()
    {
        var forecast = HeapForecast.Run(Farm with { WaterLitres = 0 });

        Assert.Equal(3, forecast.WaterAtTurnings[0].Day);
        Assert.InRange(forecast.WaterAtTurnings[0].Litres, 40, 150);
        Assert.InRange(forecast.Days[4].MoisturePercent, 53, 56);
    }

    [Fact]
    public void Heap_NeverWatered_GetsNoneAndIsNotReadySooner()
    {
        var dry = HeapForecast.Run(Farm with { WaterLitres = 0, Watering = Watering.Never });
        var watered = HeapForecast.Run(Farm with { WaterLitres = 0 });

        Assert.Empty(dry.WaterAtTurnings);
        Assert.True((dry.ReadyDay.Likely ?? 999) > watered.ReadyDay.Likely);
    }

    [Fact]
    public void Turning_OfAHotHeap_CoolsItForAWhile()
    {
        var turned = HeapForecast.Run(Farm with { TurnDays = [10] });
        var left = HeapForecast.Run(Farm with { TurnDays = [] });

        Assert.Equal(left.Days[10], turned.Days[10]);
        Assert.True(turned.Days[11].CoreC < left.Days[11].CoreC - 3);
    }

    [Fact]
    public void Checks_OfColdAgainAndAgain_MakeItReadyLater()
    {
        var cold = HeapForecast.Run(Farm with
        {
            Checks = [.. Enumerable.Range(3, 6).Select(day => new FieldCheck(day, Heat.Cold, null, RodKind.Metal))],
        });
        var plain = HeapForecast.Run(Farm);

        Assert.True(cold.Days[9].CoreC < plain.Days[9].CoreC - 5);
        Assert.True((cold.ReadyDay.Likely ?? 999) > plain.ReadyDay.Likely);
    }

    [Fact]
    public void Check_OnMetal_TellsMoreThanOnWood()
    {
        var core = Enum.GetValues<RodKind>().ToDictionary(rod => rod, rod => HeapForecast.Run(Farm with
        {
            Checks = [.. Enumerable.Range(3, 3).Select(day => new FieldCheck(day, Heat.Cool, null, rod))],
        }).Days[4].CoreC);

        Assert.True(core[RodKind.Metal] <= core[RodKind.Wood]);
    }

    [Fact]
    public void Check_OfDry_AsksForMoreWater()
    {
        var dry = HeapForecast.Run(Farm with { Checks = [new(2, null, Moisture.Dry), new(3, null, Moisture.Dry)] });

        Assert.True(dry.Days[2].MoisturePercent < HeapForecast.Run(Farm).Days[2].MoisturePercent);
        Assert.True(dry.WaterAtTurnings.Sum(water => water.Litres)
            > HeapForecast.Run(Farm).WaterAtTurnings.Sum(water => water.Litres));
    }

    [Fact]
    public void Check_AfterTheLastDayTold_StillWeighs()
    {
        var late = new FieldCheck(20, Heat.Cold, null, RodKind.Metal);

        Assert.NotEqual(
            HeapForecast.Run(Farm with { Days = 10 }).ReadyDay,
            HeapForecast.Run(Farm with { Days = 10, Checks = [late, late, late, late] }).ReadyDay);
    }

    [Fact]
    public void Horizon_AskedFor_DoesNotChangeTheDaysBefore()
    {
        var (month, year) = (HeapForecast.Run(Farm with { Days = 30 }), HeapForecast.Run(Farm with { Days = 365 }));

        Assert.Equal(month.Days, year.Days.Take(31));
        Assert.Equal(month.ReadyDay, year.ReadyDay);
        Assert.Equal(month.Yield, year.Yield);
    }

    [Fact]
    public void Run_OfAFaultyRequest_Throws() =>
        Assert.Throws<ArgumentException>(() => HeapForecast.Run(Farm with { Days = 0 }));

    private static double Peak(params ForecastPart[] parts) =>
        HeapForecast.Run(new ForecastRequest { Parts = parts, Watering = Watering.Never }).PeakC;
}
