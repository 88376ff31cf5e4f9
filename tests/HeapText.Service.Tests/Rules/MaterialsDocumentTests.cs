using HeapText.Agronomy.Materials;

namespace HeapText.Service.Tests.Rules;

/// <summary>What docs/agronomy/materials.md says is what the tables hold.</summary>
public sealed class MaterialsDocumentTests
{
    private static readonly string[] Lines =
        File.ReadAllLines(Path.Combine(RepositoryFolder.Find(), "docs", "agronomy", "materials.md"));

    [Fact]
    public void Document_OfEveryRefusedMaterial_GivesReasonWayOutAndSource() =>
        Assert.All(MaterialTable.All.Where(material => material.IsRefused), material =>
        {
            var refusal = material.Refusal!;
            var row = Lines.Single(line => line.StartsWith($"| {material.Key} |", StringComparison.Ordinal));

            Assert.Contains($"| `{refusal.Reason}`: ", row, StringComparison.Ordinal);
            Assert.Contains($"| `{refusal.Instead}`: ", row, StringComparison.Ordinal);
            Assert.EndsWith($"| {refusal.Source} | {refusal.Confidence} |", row, StringComparison.Ordinal);
        });

    [Fact]
    public void Document_OfEveryCorrectedMaterial_ShowsItsRow()
    {
        var corrected = MaterialTable.All
            .Where(material => material.Figures?.Source.Contains("impossible", StringComparison.Ordinal) ?? false);

        Assert.All(corrected, material => Assert.Single(Lines, line =>
            line.StartsWith($"| {material.Key} |", StringComparison.Ordinal)
            && line.EndsWith($" {material.Figures!.Carbon.Percent:F0} % |", StringComparison.Ordinal)));
    }
}
