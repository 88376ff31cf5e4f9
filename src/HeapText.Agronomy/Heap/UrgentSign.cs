namespace HeapText.Agronomy.Heap;

/// <summary>What cannot wait, most pressing first.</summary>
public enum UrgentSign
{
    /// <summary>Someone is badly hurt.</summary>
    BadlyHurt,

    /// <summary>Someone is burnt.</summary>
    Burn,

    /// <summary>Someone fell ill, as with cough or fever after turning.</summary>
    SickPerson,

    /// <summary>The heap smoulders or burns.</summary>
    Smouldering,

    /// <summary>Smoke, which may be steam.</summary>
    Smoke,

    /// <summary>Spray or poison is suspected in the heap.</summary>
    Poison,
}
