namespace HeapText.Dialog.Wording;

/// <summary>A word or text for each plural form that its language tells apart.</summary>
public sealed class PluralForms(IReadOnlyDictionary<string, Template> forms)
{
    /// <summary>The forms it has.</summary>
    public IReadOnlyDictionary<string, Template> Forms => forms;

    /// <summary>The form for many.</summary>
    public Template Other => For(PluralRules.Other);

    /// <summary>The form for a single thing, or for half of one.</summary>
    public Template One => For("one");

    /// <summary>The text of a plural form; that for many where it has no text of its own.</summary>
    public Template For(string category) => forms.GetValueOrDefault(category) ?? forms[PluralRules.Other];
}
