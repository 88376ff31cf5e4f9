using System.Globalization;
using System.Reflection;
using HeapText.Agronomy.Forecasting;

namespace HeapText.Agronomy.Tests.Forecasting;

/// <summary>The table of parameters in docs/agronomy/forecast.md.</summary>
public class ParametersTests
{
    [Fact]
    public void Parameters_All_StandInTheDocumentWithTheirValueAndSource()
    {
        var rows = File.ReadLines(Repository.Path("docs", "agronomy", "forecast.md"))
            .SkipWhile(line => line != "## Parameters").Where(line => line.StartsWith('|')).Skip(2)
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries)).ToList();
        var constants = typeof(Parameters).GetFields(BindingFlags.NonPublic | BindingFlags.Static)
            .ToDictionary(
                field => field.Name,
                field => Convert.ToDouble(field.GetRawConstantValue(), CultureInfo.InvariantCulture));

        Assert.Equal(constants.Keys.Order(), rows.Select(row => row[1]).Order());
        Assert.All(rows, row =>
        {
            var value = double.Parse(row[2], CultureInfo.InvariantCulture);
            Assert.Equal(1, value / constants[row[1]], 0.001);
            Assert.NotEmpty(row[4]);
            Assert.Contains(row[5], (string[])["B", "C", "D"]);
        });
    }
}
