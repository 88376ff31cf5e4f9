namespace HeapText.Agronomy.Materials;

/// <summary>A material by its stable key, with its published figures, or why it is refused.</summary>
/// <param name="Key">Stable key, kebab case.</param>
/// <param name="Role">What it does in a heap.</param>
/// <param name="Form">How it lies in a heap.</param>
/// <param name="Figures">Null for refused materials alone.</param>
public sealed record Material(string Key, MaterialRole Role, MaterialForm Form, MaterialFigures? Figures)
{
    /// <summary>Why it is refused and what to do with it instead; null unless it is.</summary>
    public Refusal? Refusal { get; init; }

    /// <summary>Whether microbes can eat its carbon and nitrogen: false for charcoal alone.</summary>
    public bool IsFood => Role != MaterialRole.Charcoal;

    /// <summary>Whether it never goes into a heap.</summary>
    public bool IsRefused => Role == MaterialRole.Refused;
}
