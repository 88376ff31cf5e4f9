using System.Globalization;
using System.Text.Json;
using HeapText.Agronomy.Materials;
using HeapText.Service.Tests.Verbs;
using HeapText.Service.Verbs;

namespace HeapText.Service.Tests.Rules;

/// <summary>
/// What docs/agronomy/worked-recipe.md works out by hand is what the tables give and the verb answers.
/// </summary>
public sealed class WorkedRecipeTests
{
    private static readonly string Page =
        File.ReadAllText(Path.Combine(RepositoryFolder.Find(), "docs", "agronomy", "worked-recipe.md"));

    private static readonly JsonElement Answer = VerbRun.Of(RecipeVerb.Run, Block("json")).Json;

    private static readonly List<Row> Rows =
        [.. Answer.GetProperty("total").EnumerateArray().Select(item => new Row(
            item.GetProperty("material").GetString()!,
            item.GetProperty("amount").GetDouble(),
            item.GetProperty("measure").GetString()!))];

    private static double Carbon => Rows.Sum(row => row.Carbon);

    private static double Nitrogen => Rows.Sum(row => row.Nitrogen);

    private static double Kg => Rows.Sum(row => row.Kg);

    private static double Dry => Rows.Sum(row => row.Dry);

    private static double Litres => Rows.Sum(row => row.Litres);

    [Fact]
    public void Layers_OnThePage_AreThoseAnswered() => AssertShown(
    [
        .. Answer.GetProperty("perRound").EnumerateArray().Select(layer =>
            $"| {layer.GetProperty("material")} | {layer.GetProperty("amount")} | {layer.GetProperty("measure")} |"),
        Text($"| water | {Number("waterPerRoundLitres"):F1} | litre |"),
        Text($"{Answer.GetProperty("rounds")} rounds"),
        .. Answer.GetProperty("unused").EnumerateArray().Select(item =>
            $"{item.GetProperty("amount")} {item.GetProperty("measure")} of {item.GetProperty("material")} is left"),
        .. Answer.GetProperty("notes").EnumerateArray().Select(note => $"`{note}`"),
        .. Answer.GetProperty("cautions").EnumerateArray().Select(caution => $"`{caution}`"),
    ]);

    [Fact]
    public void Masses_OnThePage_AreThoseOfTheTables() => AssertShown(
    [
        .. Rows.Select(row => Text(
            $"| {row.Key} | {row.Litres:F0} | {row.Density:F0} | {row.Kg:F1} | {row.Moisture:F0} | {row.Dry:F2} |")),
        Text($"| all | {Litres:F0} | | {Kg:F1} | | {Dry:F2} |"),
    ]);

    [Fact]
    public void CarbonAndNitrogen_OnThePage_AreThoseOfTheTables() => AssertShown(
    [
        .. Rows.Where(row => row.Ratio is not null).Select(row =>
            Text($"| {row.Key} | {row.Dry:F2} | {row.Percent:F1} | {row.Ratio!.Typical} |")
            + Text($" {row.Nitrogen:F3} | {row.Carbon:F2} |")),
        Text($"| all | | | | {Nitrogen:F3} | {Carbon:F2} |"),
        Text($"{Carbon:F2} / {Nitrogen:F3} = {Carbon / Nitrogen:F1}"),
    ]);

    [Fact]
    public void Water_OnThePage_IsThatOfTheBalance()
    {
        var water = (Dry / 0.45) - Kg;

        AssertShown(
        [
            Text($"({Kg:F1} - {Dry:F2}) / {Kg:F1} = {100 * (Kg - Dry) / Kg:F1} %"),
            Text($"{Dry:F2} / 0.45 - {Kg:F1} = {water:F1} L"),
            Text($"({Kg:F1} + {water:F1}) / {Litres / 1000:F2} = {(Kg + water) / Litres * 1000:F0} kg/m3"),
        ]);
        Assert.Equal(Number("waterLitres"), water, 6);
        Assert.Equal(Number("massKg"), Kg + water, 6);
        Assert.Equal(Number("cn"), Carbon / Nitrogen, 6);
        Assert.Equal(Number("volumeLitres"), Litres, 6);
    }

    [Fact]
    public void Range_OnThePage_IsThatOfTheTables()
    {
        var food = Rows.Where(row => row.Ratio is not null).ToList();
        var (c, n) = (Carbon, Nitrogen);
        var (lowC, highC) = (food.Sum(row => row.LowCarbon), food.Sum(row => row.HighCarbon));
        var (lowN, highN) = (food.Sum(row => row.LowNitrogen), food.Sum(row => row.HighNitrogen));

        AssertShown(
        [
            .. food.Select(row => Text($"| {row.Key} | {row.Ratio!.Low}-{row.Ratio.High} |")
                + Text($" {row.LowCarbon:F2} | {row.HighCarbon:F2} | {row.LowNitrogen:F3} | {row.HighNitrogen:F3} |")),
            Text($"| all | | {lowC:F2} | {highC:F2} | {lowN:F3} | {highN:F3} |"),
            Text($"| low | {lowC:F2} / {n:F3} = {lowC / n:F1} | {c:F2} / {lowN:F3} = {c / lowN:F1} |"),
            Text($"| high | {highC:F2} / {n:F3} = {highC / n:F1} | {c:F2} / {highN:F3} = {c / highN:F1} |"),
            Text($"from {Number("cnLow"):F1} to {Number("cnHigh"):F1}"),
        ]);
        Assert.Equal(Number("cnLow"), Math.Min(lowC / n, c / lowN), 6);
        Assert.Equal(Number("cnHigh"), Math.Max(highC / n, c / highN), 6);
    }

    [Fact]
    public void Shares_OnThePage_AreThoseOfTheVolumes() =>
        AssertShown([.. Rows.Select(row => Text($"| {row.Key} | {100 * row.Litres / Litres:F1} % |"))]);

    [Fact]
    public void Dimensions_OnThePage_AreThoseAnswered()
    {
        var size = Answer.GetProperty("dimensions");
        double Side(string name) => size.GetProperty(name).GetDouble();

        AssertShown(
        [
            Text($"{Side("widthM")} x {Side("lengthM")} x {Side("heightM"):F2} m"),
            Text($"{Litres / 1000:F2} / ({Side("widthM")} x {Side("lengthM")}) = {Side("heightM"):F2} m"),
            Penalty(1.5, 1.6),
            Penalty(1.5, 1.7),
            Penalty(Side("widthM"), Side("lengthM")),
        ]);
    }

    private static string Penalty(double width, double length)
    {
        var exact = Litres / 1000 / (width * length);
        var height = Math.Round(exact, 2);
        var (low, narrow, uneven) = (4 * (1.2 - height), Math.Abs(width - 1.5), 0.2 * (length - width));
        var off = 5 * Math.Max(0, (Math.Abs((height / exact) - 1) * 100) - 0.7);
        return Text($"| {width} x {length} | {exact:F4} | {height:F2} |")
            + Text($" {low:F2} + {narrow:F2} + {uneven:F2} + {off:F2} | {low + narrow + uneven + off:F2} |");
    }

    private static double Number(string name) => Answer.GetProperty(name).GetDouble();

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Block(string kind) => Page.Split($"```{kind}\n")[1].Split("```")[0];

    private static void AssertShown(IEnumerable<string> lines) =>
        Assert.Equal("", string.Join("\n", lines.Where(line => !Page.Contains(line, StringComparison.Ordinal))));

    /// <summary>One material of the heap, worked out from materials.csv alone.</summary>
    private sealed record Row(string Key, double Amount, string Measure)
    {
        private MaterialFigures Figures => MaterialTable.TryFind(Key, out var material)
            ? material.Figures!
            : throw new InvalidOperationException($"{Key} is no known material");

        internal double Litres => Amount * Measures.Default.VolumeOf(Measure).Litres;

        internal double Density => Figures.Density.KilogramsPerCubicMetre;

        internal double Kg => Litres * Density / 1000;

        internal double Moisture => Figures.Moisture.Percent;

        internal double Dry => Kg * (1 - Figures.Moisture.Value);

        /// <summary>None for ash, which holds no nitrogen, and charcoal, which is no food.</summary>
        internal FigureRange? Ratio => Key == "charcoal" ? null : Figures.CarbonNitrogen;

        internal double Percent => Figures.Nitrogen.Percent;

        internal double Nitrogen => Ratio is null ? 0 : Dry * Figures.Nitrogen.Value;

        internal double Carbon => Nitrogen * (Ratio?.Typical ?? 0);

        internal double LowCarbon => Nitrogen * Ratio!.Low;

        internal double HighCarbon => Nitrogen * Ratio!.High;

        internal double LowNitrogen => Carbon / Ratio!.Low;

        internal double HighNitrogen => Carbon / Ratio!.High;
    }
}
