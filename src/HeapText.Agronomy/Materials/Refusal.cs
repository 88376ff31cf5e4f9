namespace HeapText.Agronomy.Materials;

/// <summary>Why a material never goes into a heap, and what to do with it instead.</summary>
/// <param name="Reason">One of <see cref="RefusalReasons"/>.</param>
/// <param name="Instead">One of <see cref="RefusalAdvice"/>.</param>
/// <param name="Source">Where both come from.</param>
/// <param name="Confidence">How sure: A read; C from memory; D common practice, no source.</param>
public sealed record Refusal(string Reason, string Instead, string Source, string Confidence);
