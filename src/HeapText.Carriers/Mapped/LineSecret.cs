using System.Security.Cryptography;
using System.Text;

namespace HeapText.Carriers.Mapped;

/// <summary>A password, token or key. Never printed.</summary>
public sealed class LineSecret(string text)
{
    private readonly byte[] _digest = SHA256.HashData(Encoding.UTF8.GetBytes(text));

    /// <summary>What is shown in its place.</summary>
    public const string Mask = "HIDDEN";

    /// <summary>The secret itself, for requests to the gateway alone.</summary>
    internal string Reveal() => text;

    /// <summary>True for the same text; takes the same time whatever is given.</summary>
    internal bool Matches(string given) =>
        CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), _digest);

    /// <summary>The mask, so that an accidental print does not disclose it.</summary>
    public override string ToString() => Mask;
}
