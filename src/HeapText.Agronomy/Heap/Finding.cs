namespace HeapText.Agronomy.Heap;

/// <summary>A cause and how sure it is.</summary>
/// <param name="Cause">One of <see cref="HeapCauses.All"/>.</param>
/// <param name="Confidence">How sure.</param>
public readonly record struct Finding(string Cause, Confidence Confidence);

/// <summary>How sure a finding is: a word, since no figure was ever measured.</summary>
public enum Confidence
{
    /// <summary>One of several that may be.</summary>
    Low,

    /// <summary>Likely.</summary>
    Medium,

    /// <summary>What the signs are known for.</summary>
    High,
}
