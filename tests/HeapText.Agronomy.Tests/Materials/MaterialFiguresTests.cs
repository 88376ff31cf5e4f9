using System.Globalization;
using System.Text.RegularExpressions;
using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Tests.Reference;

namespace HeapText.Agronomy.Tests.Materials;

public partial class MaterialFiguresTests
{
    /// <summary>Plant matter holds no more carbon; compost.md, traps in the published averages. [%]</summary>
    private const double MostCarbon = 52;

    private static readonly Material[] WithFigures =
        [.. MaterialTable.All.Where(material => material.Figures is not null)];

    [Fact]
    public void Figures_ReadInPublications_AgreeWithTheTable() => Assert.All(
        ReferenceRows.Of("materials-read.csv"),
        row =>
        {
            var range = Range(Figures(row[0]), row[1]);
            var published = ReferenceRows.Number(row[2]);

            Assert.InRange(published, range.Low, range.High);
            Assert.InRange(Math.Abs(range.Typical - published), 0, ReferenceRows.Number(row[3]));
        });

    [Fact]
    public void Figures_OfEveryMaterial_RiseFromLowToHighWithinWhatCanBe() => Assert.All(WithFigures, material =>
    {
        var figures = material.Figures!;
        Rises(figures.NitrogenRange, 0, 20);
        Rises(figures.MoistureRange, 0, 98);
        Rises(figures.DensityRange, 20, 1800);
        Assert.Equal(figures.NitrogenRange.Typical == 0, figures.CarbonNitrogen is null);
        if (figures.CarbonNitrogen is { } ratio) Rises(ratio, 0.8, 1313);
    });

    [Fact]
    public void Figures_OfEveryMaterial_StateSourceAndHowSure() => Assert.All(WithFigures, material =>
    {
        Assert.NotEmpty(material.Figures!.Source);
        Assert.Matches(HowSure(), material.Figures.Confidence);
    });

    // Charring drives off the rest, so charcoal alone may hold more.
    [Fact]
    public void Carbon_OfEveryMaterialButCharcoal_IsPossible() => Assert.All(
        WithFigures.Where(material => material.Key != "charcoal"),
        material => Assert.InRange(material.Figures!.Carbon.Percent, 0, MostCarbon));

    [Fact]
    public void Carbon_WhereThePublishedAveragesAreImpossible_IsCorrectedAndSaid() => Assert.All(
        ReferenceRows.Of("published-averages.csv"),
        row =>
        {
            var impossible = ReferenceRows.Number(row[1]) * ReferenceRows.Number(row[2]) > MostCarbon;

            Assert.Equal(impossible, Figures(row[0]).Source.Contains("impossible", StringComparison.Ordinal));
        });

    [Fact]
    public void Source_ThatCallsAnAverageImpossible_ShowsTheProductThatIs()
    {
        Material[] corrected =
            [.. WithFigures.Where(m => m.Figures!.Source.Contains("impossible", StringComparison.Ordinal))];

        Assert.Equal(6, corrected.Length);
        Assert.All(corrected, material =>
        {
            var said = PublishedProduct().Match(material.Figures!.Source);
            Assert.True(said.Success);
            var (nitrogen, ratio, carbon) = (Number(said, 1), Number(said, 2), Number(said, 3));
            Assert.Equal(carbon, nitrogen * ratio, 0.5);
            Assert.True(carbon > MostCarbon);
        });
    }

    // Dry-season leaves 10-20 %, kraal manure 20-40 %: compost.md, traps in the published averages.
    [Theory]
    [InlineData("dry-leaves", 10, 20)]
    [InlineData("cow-dung-dry", 20, 40)]
    [InlineData("maize-stover", 10, 20)]
    [InlineData("rice-straw", 10, 20)]
    public void Moisture_OfADrySeason_LiesWithinTheRange(string key, double low, double high)
    {
        var range = Figures(key).MoistureRange;

        Assert.True(range.Low <= low && high <= range.High);
    }

    [Fact]
    public void Figures_TypedAsQuantities_AreTheTypicalOnes()
    {
        var figures = Figures("cow-dung");

        Assert.Equal(40, figures.Carbon.Percent, 1e-9);
        Assert.Equal(2, figures.Nitrogen.Percent, 1e-9);
        Assert.Equal(80, figures.Moisture.Percent, 1e-9);
        Assert.Equal(860, figures.Density.KilogramsPerCubicMetre);
    }

    private static MaterialFigures Figures(string key)
    {
        Assert.True(MaterialTable.TryFind(key, out var material), key);
        return material.Figures!;
    }

    private static FigureRange Range(MaterialFigures figures, string figure) => figure switch
    {
        "nitrogenPercent" => figures.NitrogenRange,
        "moisturePercent" => figures.MoistureRange,
        "carbonNitrogen" => figures.CarbonNitrogen!,
        "density" => figures.DensityRange,
        _ => throw new ArgumentException(figure),
    };

    private static void Rises(FigureRange range, double least, double most)
    {
        Assert.InRange(range.Low, least, range.Typical);
        Assert.InRange(range.High, range.Typical, most);
    }

    private static double Number(Match match, int group) =>
        double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[A-D]( \(((C/N|N|moisture|density) [A-D](, )?)+\))?$")]
    private static partial Regex HowSure();

    [GeneratedRegex(@"Published avg N ([\d.]+) x C/N (\d+) = (\d+)% C, impossible: ")]
    private static partial Regex PublishedProduct();
}
