using System.Xml.Linq;

namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>The forecast against measured behaviour. HEAPTEXT_ACCEPT=1 writes page and plots anew.</summary>
public sealed class ValidationPageTests
{
    private static string Docs => Repository.Path("docs", "agronomy");

    public static TheoryData<string> Keys => [.. ValidationPage.Rows.Select(row => row.Key)];

    [Fact]
    public void Page_Written_IsAsCommitted() => AssertCommitted("validation.md", ValidationPage.Text());

    [Theory]
    [MemberData(nameof(Keys))]
    public void Plot_Drawn_IsAsCommitted(string key) =>
        AssertCommitted(Path.Combine("plots", $"{key}.svg"), Plot.Of(RowOf(key)));

    [Theory]
    [MemberData(nameof(Keys))]
    public void Claim_OfAStudy_ComparesAsRecorded(string key) => Assert.Equal(
        RowOf(key).Claims.Select(claim => (claim.What, claim.Recorded)),
        RowOf(key).Claims.Select(claim => (claim.What, claim.Verdict)));

    [Theory]
    [MemberData(nameof(Keys))]
    public void Plot_Drawn_IsWellFormedWithATextAlternative(string key)
    {
        var svg = XDocument.Parse(Plot.Of(RowOf(key))).Root!;

        Assert.NotEmpty(svg.Elements().Single(element => element.Name.LocalName == "title").Value);
        Assert.NotEmpty(svg.Elements().Single(element => element.Name.LocalName == "desc").Value);
    }

    [Fact]
    public void Plots_Committed_AreThoseOfTheRows() => Assert.Equal(
        ValidationPage.Rows.Select(row => $"{row.Key}.svg").Order(StringComparer.Ordinal),
        Directory.GetFiles(Path.Combine(Docs, "plots"))
            .Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));

    private static ValidationRow RowOf(string key) => ValidationPage.Rows.Single(row => row.Key == key);

    private static void AssertCommitted(string name, string written)
    {
        var path = Path.Combine(Docs, name);
        if (Environment.GetEnvironmentVariable("HEAPTEXT_ACCEPT") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, written);
        }
        else
        {
            Assert.Equal(File.ReadAllText(path), written);
        }
    }
}
