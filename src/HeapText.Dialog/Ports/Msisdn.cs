namespace HeapText.Dialog.Ports;

/// <summary>A telephone number in international form (ITU-T E.164): "+" and 7 to 15 digits.</summary>
public readonly record struct Msisdn
{
    private readonly string? _value;

    private Msisdn(string value) => _value = value;

    /// <summary>The number with its leading "+". Personal: never log it, show <see cref="Masked"/> instead.</summary>
    /// <exception cref="InvalidOperationException">The value was never set.</exception>
    public string Value => _value ?? throw new InvalidOperationException("This number was never set.");

    /// <summary>The number with its middle digits hidden, fit for logs and pages: "+999*******01".</summary>
    public string Masked =>
        string.Concat(Value.AsSpan(0, 4), new string('*', Value.Length - 6), Value.AsSpan(Value.Length - 2));

    /// <summary>Takes a number already in E.164 form; false when it is not.</summary>
    public static bool TryParse(string? text, out Msisdn number)
    {
        number = default;
        if (text is not { Length: >= 8 and <= 16 } || text[0] != '+' || text[1] == '0') return false;
        foreach (var c in text.AsSpan(1))
            if (!char.IsAsciiDigit(c)) return false;
        number = new Msisdn(text);
        return true;
    }

    /// <summary>The masked number, so that an accidental print does not disclose it.</summary>
    public override string ToString() => _value is null ? "" : Masked;
}
