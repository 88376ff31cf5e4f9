using HeapText.Agronomy.Materials;
using HeapText.Service.Startup;
using HeapText.Service.Verbs;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class DistrictSettingsReaderTests
{
    [Fact]
    public void Read_NothingMeasured_KeepsTheTables()
    {
        var district = Read();

        Assert.Empty(district.BucketKg);
        Assert.Empty(district.MoisturePercent);
        Assert.Equal(65, district.LocalMeasures().VolumeOf("wheelbarrow").Litres);
    }

    [Fact]
    public void Read_BucketMoistureAndMeasure_AreTheDistrictsOwn()
    {
        var district = Read(
            ("Materials:rice-straw:BucketKg", "1.5"), ("Materials:rice-straw:MoisturePercent", "18"),
            ("Measures:wheelbarrow", "80"));

        Assert.Equal(75, district.For("rice-straw").DensityKgPerM3!.Value, 1e-6);
        Assert.Equal(18, district.For("rice-straw").MoisturePercent);
        Assert.Equal(80, district.LocalMeasures().VolumeOf("wheelbarrow").Litres);
    }

    [Fact]
    public void Read_KeysInCapitals_AreTheSameKeys()
    {
        var district = Read(("MATERIALS:Rice-Straw:bucketkg", "2"), ("Measures:BUCKET", "10"));

        Assert.Equal(200, district.For("rice-straw").DensityKgPerM3!.Value, 1e-6);
    }

    [Fact]
    public void Read_FromTheEnvironment_IsTakenLikeAnyOther()
    {
        const string weighed = "HEAPTEXT__Materials__rice-straw__BucketKg";
        Environment.SetEnvironmentVariable(weighed, "2");
        try
        {
            var configuration = ServeVerb.AddSettings(new ConfigurationBuilder()).Build();

            Assert.Equal(2, SettingsReader.Read(configuration, fresh: false).District.BucketKg["rice-straw"]);
        }
        finally
        {
            Environment.SetEnvironmentVariable(weighed, null);
        }
    }

    [Theory]
    [InlineData("Materials", "rice-straw")]
    [InlineData("Materials:rice-straw", "2")]
    [InlineData("Materials:rice-straw:BucketKg", "two")]
    [InlineData("Materials:rice-straw:BucketKg", "1,5")]
    [InlineData("Materials:rice-straw:BucketKg", "")]
    [InlineData("Materials:rice-straw:BucketKg", "0.1")]
    [InlineData("Materials:rice-straw:BucketKg", "NaN")]
    [InlineData("Materials:rice-straw:BucketKg", "41")]
    [InlineData("Materials:rice-straw:MoisturePercent", "99")]
    [InlineData("Materials:rice-straw:Nitrogen", "1")]
    [InlineData("Materials:straw:BucketKg", "2")]
    [InlineData("Materials:plastic:BucketKg", "2")]
    [InlineData("Measures", "80")]
    [InlineData("Measures:wheelbarrow", "a lot")]
    [InlineData("Measures:wheelbarrow", "0")]
    [InlineData("Measures:wheelbarrow:Litres", "80")]
    [InlineData("Measures:kg", "2")]
    [InlineData("Measures:cup", "0.2")]
    public void Read_OneBadSetting_NamesItWithItsFix(string key, string value)
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read((key, value))).Faults.Single();

        Assert.StartsWith(string.Join(':', key.Split(':').Take(2)), fault, StringComparison.Ordinal);
        Assert.Matches(@"[.:;] .+\.$", fault);
    }

    [Fact]
    public void Read_ManyBadSettings_NamesThemAllAtOnce()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read(
            ("Materials:rice-straw:BucketKg", "50"), ("Materials:rice-straw:MoisturePercent", "wet"),
            ("Materials:straw:BucketKg", "2"), ("Measures:wheelbarrow", "-1")));

        Assert.Equal(
            [
                "Materials:rice-straw:BucketKg", "Materials:rice-straw:MoisturePercent", "Materials:straw",
                "Measures:wheelbarrow",
            ],
            fault.Faults.Select(line => line.Split(' ')[0]).Order(StringComparer.Ordinal));
    }

    private static DistrictFigures Read(params (string Key, string Value)[] settings) => SettingsReader.Read(
        new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(pair => KeyValuePair.Create(pair.Key, (string?)pair.Value))).Build(),
        fresh: false).District;
}
