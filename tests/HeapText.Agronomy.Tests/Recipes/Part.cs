using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Recipes;

namespace HeapText.Agronomy.Tests.Recipes;

/// <summary>What a stock item amounts to, worked out apart from the solver.</summary>
internal sealed record Part(
    string Key, MaterialRole Role, double Litres, double Mass, double Dry, double Carbon, double Nitrogen)
{
    internal static Part Of(StockItem item)
    {
        Assert.True(MaterialTable.TryFind(item.Material, out var material));
        var figures = material.Figures!;
        var perM3 = figures.Density.KilogramsPerCubicMetre;
        var litres = item.Measure == "kg" ? item.Amount / perM3 * 1000
            : item.Amount * Measures.Default.VolumeOf(item.Measure).Litres;
        var mass = litres * perM3 / 1000;
        return new Part(
            item.Material,
            material.Role,
            item.Material is "urine" or "slurry" ? 0 : litres,
            mass,
            mass * (1 - figures.Moisture.Value),
            figures.Carbon.Value,
            figures.Nitrogen.Value);
    }
}
