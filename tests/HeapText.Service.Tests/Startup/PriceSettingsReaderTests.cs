using HeapText.Service.Startup;
using Microsoft.Extensions.Configuration;

namespace HeapText.Service.Tests.Startup;

public sealed class PriceSettingsReaderTests
{
    [Fact]
    public void Read_NoPrices_ValuesNothing()
    {
        var prices = Read().Prices;

        Assert.Empty(prices.PerKg);
        Assert.Equal("", prices.Currency);
    }

    [Fact]
    public void Read_Prices_AreOfAKilogramInTheLocalMoney()
    {
        var prices = Read(("urea", "85.50"), ("npk-17-17-17", "100"), ("Currency", " KES ")).Prices;

        Assert.Equal("KES", prices.Currency);
        Assert.Equal(new Dictionary<string, double> { ["urea"] = 85.5, ["npk-17-17-17"] = 100 }, prices.PerKg);
    }

    // Names of settings are the same in capitals, as those of the environment often are.
    [Fact]
    public void Read_NameInCapitals_IsTheSameFertiliser() =>
        Assert.Equal(90, Read(("DAP", "90"), ("CURRENCY", "KES")).Prices.PerKg["dap"]);

    [Theory]
    [InlineData("urea", "")]
    [InlineData("urea", "dear")]
    [InlineData("urea", "0")]
    [InlineData("urea", "-3")]
    [InlineData("urea", "85,50")]
    [InlineData("urea", "1e3")]
    [InlineData("urea", "1000001")]
    [InlineData("guano", "3")]
    [InlineData("Currency", "")]
    [InlineData("Currency", "shillings of old")]
    [InlineData("Currency", "₦")]
    public void Read_OneBadPrice_NamesItWithItsFix(string key, string value)
    {
        var fault = Assert.Throws<SettingsFaultsException>(
            () => Read(("dap", "90"), ("Currency", key == "Currency" ? value : "KES"), (key, value)));

        Assert.StartsWith($"Prices:{key} ", fault.Faults.Single(), StringComparison.Ordinal);
        Assert.Matches(@"[.:;] .+\.$", fault.Faults.Single());
    }

    [Fact]
    public void Read_PriceWithoutCurrency_AsksForIt()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read(("urea", "85")));

        Assert.StartsWith("Prices:Currency is missing", fault.Faults.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_SectionWithAValueOfItsOwn_IsRefused()
    {
        var fault = Assert.Throws<SettingsFaultsException>(() => Read(("", "85")));

        Assert.StartsWith("Prices is a section", fault.Faults.Single(), StringComparison.Ordinal);
    }

    private static Settings Read(params (string Key, string Value)[] prices) => SettingsReader.Read(
        new ConfigurationBuilder().AddInMemoryCollection(prices
            .DistinctBy(price => price.Key)
            .Select(price => new KeyValuePair<string, string?>($"Prices:{price.Key}".TrimEnd(':'), price.Value)))
            .Build(),
        fresh: false);
}
