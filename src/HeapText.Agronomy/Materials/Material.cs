namespace HeapText.Agronomy.Materials;

/// <summary>A material by its stable key, with its published figures where there are any.</summary>
/// <param name="Key">Stable key, kebab case.</param>
/// <param name="Role">What it does in a heap.</param>
/// <param name="Form">How it lies in a heap.</param>
/// <param name="Figures">Null where no figures were found, and for refused materials.</param>
public sealed record Material(string Key, MaterialRole Role, MaterialForm Form, MaterialFigures? Figures)
{
    /// <summary>Whether microbes can eat its carbon and nitrogen: false for charcoal alone.</summary>
    public bool IsFood => Role != MaterialRole.Charcoal;

    /// <summary>Whether it never goes into a heap.</summary>
    public bool IsRefused => Role == MaterialRole.Refused;
}
