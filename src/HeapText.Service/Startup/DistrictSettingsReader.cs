using System.Globalization;
using HeapText.Agronomy.Materials;

namespace HeapText.Service.Startup;

/// <summary>Reads the sections Materials and Measures: what an office weighed and measured itself.</summary>
/// <remarks>
/// <c>Materials:rice-straw:BucketKg</c> is the kilograms in one full bucket,
/// <c>Materials:rice-straw:MoisturePercent</c> the water of fresh mass, <c>Measures:wheelbarrow</c> the litres of one.
/// The bucket weighed is the 20-litre one, or that of <c>Measures:bucket</c>.
/// </remarks>
internal static class DistrictSettingsReader
{
    private static readonly string[] Known =
        [nameof(DistrictFigures.BucketKg), nameof(DistrictFigures.MoisturePercent)];

    /// <summary>The district's figures; every fault is added to <paramref name="faults"/>.</summary>
    public static DistrictFigures Read(IConfiguration configuration, List<string> faults)
    {
        var materials = configuration.GetSection("Materials").GetChildren().ToList();
        foreach (var material in materials) CheckSection(material, faults);
        var district = new DistrictFigures
        {
            BucketKg = Numbers(Of(materials, nameof(DistrictFigures.BucketKg)), faults),
            MoisturePercent = Numbers(Of(materials, nameof(DistrictFigures.MoisturePercent)), faults),
            MeasureLitres = Numbers(
                configuration.GetSection("Measures").GetChildren().Select(measure => (measure.Key, measure)), faults),
        };
        faults.AddRange(district.Check().Select(fault => $"{fault.Field} {fault.Reason}."));
        return district;
    }

    private static void CheckSection(IConfigurationSection material, List<string> faults)
    {
        SettingsReader.RefuseOthers(material, Known, faults);
        if (SettingsReader.Filled(material.Value) is not null)
            faults.Add($"{material.Path} holds no value itself. Write {material.Path}:{Known[0]}=8.5.");
    }

    // Keys of settings are the same in small and capital letters; keys of materials and measures are small.
    private static Dictionary<string, double> Numbers(
        IEnumerable<(string Key, IConfigurationSection Figure)> figures, List<string> faults) => figures
        .Select(one => (one.Key, Value: Number(one.Figure, faults)))
        .Where(one => one.Value is not null)
        .ToDictionary(one => one.Key.ToLowerInvariant(), one => one.Value!.Value, StringComparer.Ordinal);

    private static IEnumerable<(string Key, IConfigurationSection Figure)> Of(
        IEnumerable<IConfigurationSection> materials, string figure) => materials
        .Select(material => (material.Key, Figure: material.GetSection(figure)))
        .Where(one => one.Figure.Exists());

    private static double? Number(IConfigurationSection section, List<string> faults)
    {
        if (double.TryParse(section.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
            return number;
        faults.Add($"{section.Path} is no number. Write one like 8.5, or take it out.");
        return null;
    }
}
