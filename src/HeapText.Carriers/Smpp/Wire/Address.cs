namespace HeapText.Carriers.Smpp.Wire;

/// <summary>A sender or receiver as it stands in a PDU.</summary>
/// <param name="Ton">Type of number; SMPP 3.4, section 5.2.5.</param>
/// <param name="Npi">Numbering plan; SMPP 3.4, section 5.2.6.</param>
/// <param name="Value">Digits without <c>+</c>, or letters; up to 20 characters.</param>
internal readonly record struct Address(byte Ton, byte Npi, string Value)
{
    /// <summary>No address: the peer puts its own in, or none is needed.</summary>
    public static readonly Address None = new(0, 0, "");

    /// <summary>TON and NPI alone: numbers stay out of logs.</summary>
    public override string ToString() => $"TON {Ton} NPI {Npi}";
}
