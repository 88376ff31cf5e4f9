using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Recipes;
using HeapText.Agronomy.Tests.Reference;

namespace HeapText.Agronomy.Tests.Materials;

public class DistrictFiguresTests
{
    [Fact]
    public void Bucket_Weighed_GivesThePublishedDensity() => Assert.All(
        ReferenceRows.Of("bulk-density.csv"),
        row =>
        {
            var net = ReferenceRows.Number(row[3]) - ReferenceRows.Number(row[2]);
            var district = new DistrictFigures
            {
                BucketKg = Of("old-compost", net),
                MeasureLitres = Of("bucket", ReferenceRows.Number(row[1])),
            };

            Assert.Equal(ReferenceRows.Number(row[4]), district.For("old-compost").DensityKgPerM3!.Value, 1e-6);
        });

    [Fact]
    public void Bucket_OfNoVolumeGiven_HoldsTwentyLitres() => Assert.Equal(
        850, new DistrictFigures { BucketKg = Of("cow-dung", 17) }.For("cow-dung").DensityKgPerM3!.Value, 1e-6);

    [Fact]
    public void Bucket_OfAnotherVolume_IsTheOneThatWasWeighed()
    {
        var district = new DistrictFigures { BucketKg = Of("cow-dung", 17), MeasureLitres = Of("bucket", 18) };

        Assert.Equal(17 / 0.018, district.For("cow-dung").DensityKgPerM3!.Value, 1e-6);
        Assert.Equal(18, district.LocalMeasures().VolumeOf("bucket").Litres);
    }

    [Fact]
    public void Material_NotMeasured_KeepsTheTablesFigures()
    {
        var district = new DistrictFigures { MoisturePercent = Of("rice-straw", 18) };

        Assert.Equal(GivenFigures.None, district.For("maize-stover"));
        Assert.Equal(new GivenFigures { MoisturePercent = 18 }, district.For("rice-straw"));
        Assert.Equal(65, district.LocalMeasures().VolumeOf("wheelbarrow").Litres);
    }

    [Fact]
    public void Recipe_OfADistrictsFigures_CountsWithThem()
    {
        var district = new DistrictFigures
        {
            BucketKg = Of("rice-straw", 2),
            MoisturePercent = Of("rice-straw", 20),
            MeasureLitres = Of("wheelbarrow", 80),
        };
        Assert.Empty(district.Check());

        var usual = Solve(DistrictFigures.None);
        var own = Solve(district);

        Assert.True(own.Volume.Litres > usual.Volume.Litres);
        Assert.True(own.Mass.Kilograms > usual.Mass.Kilograms);
    }

    [Theory]
    [InlineData("rice-straw", 0.1, null, "Materials:rice-straw:BucketKg")]
    [InlineData("rice-straw", 40.1, null, "Materials:rice-straw:BucketKg")]
    [InlineData("rice-straw", double.NaN, null, "Materials:rice-straw:BucketKg")]
    [InlineData("rice-straw", null, -1.0, "Materials:rice-straw:MoisturePercent")]
    [InlineData("rice-straw", null, 98.1, "Materials:rice-straw:MoisturePercent")]
    [InlineData("rice-straw", null, double.NaN, "Materials:rice-straw:MoisturePercent")]
    [InlineData("seaweed", 5.0, 50.0, "Materials:seaweed")]
    [InlineData("plastic", 5.0, null, "Materials:plastic")]
    public void Check_FigureThatCannotBe_NamesItOnce(string key, double? kilograms, double? moisture, string field)
    {
        var district = new DistrictFigures { BucketKg = Of(key, kilograms), MoisturePercent = Of(key, moisture) };

        Assert.Equal(field, district.Check().Single().Field);
    }

    [Theory]
    [InlineData("rice-straw", 0.2, 0.0)]
    [InlineData("topsoil", 40.0, 98.0)]
    public void Check_FigureAtTheEdge_IsTaken(string key, double kilograms, double moisture) => Assert.Empty(
        new DistrictFigures { BucketKg = Of(key, kilograms), MoisturePercent = Of(key, moisture) }.Check());

    [Fact]
    public void Check_HeavyLoadInATinyBucket_NamesTheWeight()
    {
        var district = new DistrictFigures { BucketKg = Of("topsoil", 30), MeasureLitres = Of("bucket", 2) };

        var fault = district.Check().Single();

        Assert.Equal("Materials:topsoil:BucketKg", fault.Field);
        Assert.Contains("Measures:bucket", fault.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_ManyFaults_NamesThemAll()
    {
        var district = new DistrictFigures
        {
            BucketKg = new Dictionary<string, double> { ["topsoil"] = 50, ["wheat"] = 3 },
            MoisturePercent = Of("cow-dung", 120),
            MeasureLitres = new Dictionary<string, double> { ["bucket"] = 0, ["kg"] = 1 },
        };

        Assert.Equal(
            [
                "Materials:cow-dung:MoisturePercent", "Materials:topsoil:BucketKg", "Materials:wheat",
                "Measures:bucket", "Measures:kg",
            ],
            district.Check().Select(fault => fault.Field));
    }

    private static Dictionary<string, double> Of(string key, double? value) =>
        value is { } given ? new Dictionary<string, double> { [key] = given } : [];

    private static Recipe Solve(DistrictFigures district)
    {
        StockItem[] stock = [new("rice-straw", 20, "wheelbarrow"), new("cow-dung", 15, "bucket")];
        var request = new RecipeRequest
        {
            Stock = [.. stock.Select(item => item with { Given = district.For(item.Material) })],
            Measures = district.LocalMeasures(),
        };
        return Assert.IsType<RecipeResult.Solved>(RecipeSolver.Solve(request)).Recipe;
    }
}
