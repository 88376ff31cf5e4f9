using HeapText.Agronomy.Use;

namespace HeapText.Agronomy.Tests.Use;

public sealed class CompostUseTests
{
    [Fact]
    public void For_CompostThatIsThere_SaysHowFarItGoes()
    {
        var result = CompostUse.For(Maize with { CompostKg = 62 });

        Assert.Equal(124, result.Needed.Kilograms, 9);
        Assert.Equal(100, result.CoversM2, 9);
        Assert.Equal(440, result.CoversPlants, 9);
    }

    [Fact]
    public void For_NoCompostNamed_CountsOnWhatIsNeeded()
    {
        var result = CompostUse.For(Maize);

        Assert.Equal(200, result.CoversM2, 9);
        Assert.Equal(124 * 0.6 * 0.009, result.Nitrogen.Kilograms, 9);
    }

    [Fact]
    public void For_PlantsOrTheirGround_NeedsTheSame()
    {
        var plants = CompostUse.For(new UseRequest { Crop = "maize", Plants = 880 });

        Assert.Equal(CompostUse.For(Maize).Needed.Kilograms, plants.Needed.Kilograms, 9);
    }

    // 1.08 kg N of the first year (reference NITROGEN) at 92 a kilogram of urea, 200 a kilogram N.
    [Fact]
    public void For_Prices_CountsTheCheapestNitrogenOnce()
    {
        var request = Maize with
        {
            CompostKg = 1000,
            NitrogenPercent = 1.2,
            Prices = new Dictionary<string, double> { ["urea"] = 92, ["can-27"] = 81, ["dap"] = 90 },
        };

        var result = CompostUse.For(request);

        Assert.Equal(216, result.Value!.Value, 9);
        Assert.Equal(115.2, result.ValueLater!.Value, 9);
        Assert.DoesNotContain(UseCautions.ValueOfCompound, result.Cautions);
    }

    [Fact]
    public void For_OnlyACompoundPriced_WarnsThatTheMoneyIsTooHigh()
    {
        var request = Maize with { Prices = new Dictionary<string, double> { ["dap"] = 90 } };

        Assert.Contains(UseCautions.ValueOfCompound, CompostUse.For(request).Cautions);
    }

    [Fact]
    public void For_NoPrices_ClaimsNoMoney()
    {
        Assert.Null(CompostUse.For(Maize).Value);
        Assert.Null(CompostUse.For(Maize).ValueLater);
    }

    [Theory]
    [InlineData("rice", 1.0, null, null, null, null, "crop")]
    [InlineData("maize", null, null, null, null, null, "areaM2")]
    [InlineData("maize", 1.0, 1.0, null, null, null, "plants")]
    [InlineData("maize", 0.0, null, null, null, null, "areaM2")]
    [InlineData("maize", -1.0, null, null, null, null, "areaM2")]
    [InlineData("maize", double.NaN, null, null, null, null, "areaM2")]
    [InlineData("maize", 2e6, null, null, null, null, "areaM2")]
    [InlineData("maize", null, 1.5, null, null, null, "plants")]
    [InlineData("maize", null, -3.0, null, null, null, "plants")]
    [InlineData("maize", null, double.PositiveInfinity, null, null, null, "plants")]
    [InlineData("maize", 1.0, null, -1.0, null, null, "compostKg")]
    [InlineData("maize", 1.0, null, null, 101.0, null, "moisturePercent")]
    [InlineData("maize", 1.0, null, null, null, 3.1, "nitrogenPercent")]
    [InlineData("maize", 1.0, null, null, null, -0.1, "nitrogenPercent")]
    public void For_WhatCannotBe_NamesTheField(
        string crop, double? area, double? plants, double? compost, double? moisture, double? nitrogen, string field)
    {
        var request = new UseRequest
        {
            Crop = crop,
            AreaM2 = area,
            Plants = plants,
            CompostKg = compost,
            MoisturePercent = moisture,
            NitrogenPercent = nitrogen,
        };

        Assert.Equal(field, request.Check()?.Field);
        Assert.Throws<ArgumentException>(() => CompostUse.For(request));
    }

    [Fact]
    public void Check_PriceOfAnUnknownFertiliser_NamesItWithinThePrices()
    {
        var request = Maize with { Prices = new Dictionary<string, double> { ["guano"] = 3 } };

        Assert.Equal("prices.guano", request.Check()?.Field);
    }

    private static UseRequest Maize => new() { Crop = "maize", AreaM2 = 200 };
}
