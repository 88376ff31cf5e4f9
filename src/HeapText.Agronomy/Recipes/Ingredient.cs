using HeapText.Agronomy.Materials;
using HeapText.Agronomy.Mixing;
using HeapText.Agronomy.Quantities;

namespace HeapText.Agronomy.Recipes;

/// <summary>A material on hand with what half a measure of it brings to a heap.</summary>
internal sealed record Ingredient
{
    private const double WetManure = 0.60;

    internal required Material Material { get; init; }

    internal required StockItem Stock { get; init; }

    /// <summary>Space half a measure fills; 0 for liquids. [L]</summary>
    internal required double Litres { get; init; }

    /// <summary>Fresh mass of half a measure. [kg]</summary>
    internal required double Mass { get; init; }

    /// <summary>Dry mass of half a measure. [kg]</summary>
    internal required double Dry { get; init; }

    /// <summary>What microbes can eat in half a measure. [kg]</summary>
    internal required Food Food { get; init; }

    /// <summary>The same at the ends of the material's C/N range. [kg]</summary>
    internal required VariedFood Varied { get; init; }

    /// <summary>Whether it goes bad when left: green, wet manure and feed.</summary>
    internal bool Spoils =>
        Material.Role is MaterialRole.Green or MaterialRole.Feed
        || (Material.Role == MaterialRole.Manure && Mass - Dry > WetManure * Mass);

    /// <summary>Reads a stock item by the table and the figures given; null when it never goes in.</summary>
    /// <exception cref="ArgumentException">Figures given that <see cref="StockItem.Check"/> faults.</exception>
    internal static Ingredient? From(StockItem stock, Measures measures)
    {
        if (!MaterialTable.TryFind(stock.Material, out var material) || material.IsRefused)
        {
            return null;
        }

        var (composition, fault) = Composition.Resolve(material, stock.Given);
        var density = stock.Given.DensityKgPerM3 is { } given
            ? BulkDensity.FromKilogramsPerCubicMetre(given)
            : material.Figures!.Density;
        return composition is null
            ? throw new ArgumentException(fault!.ToString(), nameof(stock))
            : Half(stock, material, composition, density, measures);
    }

    private static Ingredient Half(
        StockItem stock, Material material, Composition composition, BulkDensity density, Measures measures)
    {
        const double half = 0.5;
        var (mass, volume) = stock.Measure == Measures.Kilogram
            ? (Quantities.Mass.FromKilograms(half), Quantities.Mass.FromKilograms(half) / density)
            : (measures.VolumeOf(stock.Measure) * Fraction.FromValue(half) * density,
                measures.VolumeOf(stock.Measure) * Fraction.FromValue(half));
        var portion = new Portion(mass, composition, material.IsFood);
        var food = new Food(portion.Carbon.Kilograms, portion.Nitrogen.Kilograms);
        return new Ingredient
        {
            Material = material,
            Stock = stock,
            Litres = material.Form == MaterialForm.Liquid ? 0 : volume.Litres,
            Mass = mass.Kilograms,
            Dry = portion.Dry.Kilograms,
            Food = food,
            Varied = VariedFood.Of(food, material, stock.Given),
        };
    }
}
