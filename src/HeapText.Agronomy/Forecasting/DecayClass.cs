using HeapText.Agronomy.Materials;

namespace HeapText.Agronomy.Forecasting;

/// <summary>How the volatile solids of a kind of material rot: three pools, the rest stays.</summary>
/// <param name="Key">Name of the class in decay.csv.</param>
/// <param name="Fast">Sugars, starch, protein. [kg/kg VS]</param>
/// <param name="Medium">Cellulose and the like. [kg/kg VS]</param>
/// <param name="Slow">Matter held in lignin. [kg/kg VS]</param>
/// <param name="Source">Where the figures come from.</param>
/// <param name="Confidence">C from memory or by rule; D weak estimate.</param>
internal sealed record DecayClass(
    string Key, double Fast, double Medium, double Slow, string Source, string Confidence)
{
    private static readonly Dictionary<string, DecayClass> ByMaterial = new(StringComparer.Ordinal);
    private static readonly Dictionary<MaterialRole, DecayClass> ByRole = [];

    /// <summary>All classes, in the file's order; the last is for a material known by figures alone.</summary>
    internal static IReadOnlyList<DecayClass> All { get; } = ReadAll();

    private static DecayClass Unknown => All[^1];

    /// <summary>Share of volatile solids that rots at all. [kg/kg VS]</summary>
    internal double Degradable => Fast + Medium + Slow;

    /// <summary>Rate of the whole at the start, at the best temperature and moisture. [1/d]</summary>
    internal double OverallRate =>
        (Fast * Parameters.FastRate) + (Medium * Parameters.MediumRate) + (Slow * Parameters.SlowRate);

    /// <summary>The class of a material: its own, else its role's, else the last.</summary>
    internal static DecayClass Of(Material? material) =>
        material is null ? Unknown
        : ByMaterial.TryGetValue(material.Key, out var own) ? own
        : ByRole.GetValueOrDefault(material.Role, Unknown);

    private static List<DecayClass> ReadAll()
    {
        List<DecayClass> all = [];
        foreach (var row in CsvRows.OfResource("Forecasting.decay.csv"))
        {
            var one = new DecayClass(
                row["class"],
                row.Number("fast")!.Value,
                row.Number("medium")!.Value,
                row.Number("slow")!.Value,
                row["source"],
                row["confidence"]);
            all.Add(one);
            foreach (var key in row["materials"].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                ByMaterial.Add(key, one);
            }

            if (row["role"].Length > 0)
            {
                ByRole.Add(Enum.Parse<MaterialRole>(row["role"], ignoreCase: true), one);
            }
        }

        return all;
    }
}
