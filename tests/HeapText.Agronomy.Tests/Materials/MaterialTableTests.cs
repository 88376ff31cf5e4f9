using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Tests.Reference;

namespace HeapText.Agronomy.Tests.Materials;

public class MaterialTableTests
{
    [Fact]
    public void Figures_ReadInPublications_AgreeWithTheTable()
    {
        foreach (var row in ReferenceRows.Of("materials-read.csv"))
        {
            Assert.True(MaterialTable.TryFind(row[0], out var material), row[0]);
            var figures = material.Figures!;

            var figure = row[1] switch
            {
                "nitrogenPercent" => figures.Nitrogen.Percent,
                "moisturePercent" => figures.Moisture.Percent,
                "carbonNitrogen" => figures.CarbonNitrogen!.Typical,
                _ => figures.Density.KilogramsPerCubicMetre,
            };

            var miss = Math.Abs(figure - ReferenceRows.Number(row[2]));
            Assert.True(miss <= ReferenceRows.Number(row[3]), $"{row[0]} {row[1]} {figure}");
        }
    }

    [Fact]
    public void Figures_OfEveryMaterial_ArePossibleAndSourced() =>
        Assert.All(MaterialTable.All.Where(material => material.Figures is not null), material =>
        {
            var figures = material.Figures!;
            Assert.NotEmpty(figures.Source);
            Assert.NotEmpty(figures.Confidence);
            Assert.True(figures.Carbon.Percent <= 60, "no dry plant matter holds more carbon");
            Assert.InRange(figures.Density.KilogramsPerCubicMetre, 20, 2000);
            if (figures.CarbonNitrogen is { } ratio)
            {
                Assert.InRange(ratio.Typical, ratio.Low, ratio.High);
            }
        });

    [Theory]
    [InlineData("cow-dung", MaterialRole.Manure, true)]
    [InlineData("brewers-grain", MaterialRole.Feed, true)]
    [InlineData("topsoil", MaterialRole.Earth, true)]
    [InlineData("charcoal", MaterialRole.Charcoal, true)]
    [InlineData("lime", MaterialRole.Mineral, false)]
    [InlineData("termite-soil", MaterialRole.Earth, false)]
    [InlineData("plastic", MaterialRole.Refused, false)]
    public void Material_ByItsKey_HasItsRoleAndFiguresWhereFound(string key, MaterialRole role, bool hasFigures)
    {
        Assert.True(MaterialTable.TryFind(key, out var material));

        Assert.Equal(role, material.Role);
        Assert.Equal(hasFigures, material.Figures is not null);
    }

    [Theory]
    [InlineData("seaweed")]
    [InlineData("Cow-Dung")]
    [InlineData(null)]
    public void Material_OfAnUnknownKey_IsNotFound(string? key) => Assert.False(MaterialTable.TryFind(key, out _));
}
