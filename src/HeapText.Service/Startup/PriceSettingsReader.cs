using System.Globalization;
using HeapText.Agronomy.Use;
using HeapText.Dialog.Wording;

namespace HeapText.Service.Startup;

/// <summary>Reads the Prices section: what a kilogram of each fertiliser costs here.</summary>
internal static class PriceSettingsReader
{
    private const string Currency = "Currency";
    private const int LongestCurrency = Value.Money.LongestCurrency;

    /// <summary>The prices; every fault is added to <paramref name="faults"/>.</summary>
    public static LocalPrices Read(IConfigurationSection prices, List<string> faults)
    {
        SettingsReader.RefuseOthers(prices, [.. FertiliserTable.All.Select(one => one.Key), Currency], faults);
        var perKg = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (key, text) in FertiliserTable.All
            .Select(one => (one.Key, Text: SettingsReader.Filled(prices[one.Key])))
            .Where(one => prices.GetSection(one.Key).Exists()))
        {
            if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var price)
                && FertiliserTable.IsPrice(price))
                perKg[key] = price;
            else
                faults.Add($"{prices.Path}:{key} is no price of a kilogram. Write one in digits, such as 85.50.");
        }
        return new LocalPrices(ReadCurrency(prices, faults), perKg);
    }

    private static string ReadCurrency(IConfigurationSection prices, List<string> faults)
    {
        var currency = SettingsReader.Filled(prices[Currency]) ?? "";
        if (currency.Length == 0 && prices.GetChildren().Any())
            faults.Add($"{prices.Path}:{Currency} is missing. Write it as farmers do, such as KES.");
        // Other characters could double the parts of a message.
        else if (currency.Length > LongestCurrency || !currency.All(IsPlain))
            faults.Add($"{prices.Path}:{Currency} is too long or no plain text. "
                + $"Use up to {LongestCurrency} letters, dots or spaces, such as KES.");
        return currency;
    }

    private static bool IsPlain(char letter) => char.IsAsciiLetter(letter) || letter is '.' or ' ';
}
