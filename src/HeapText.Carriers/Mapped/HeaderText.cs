using System.Text.RegularExpressions;

namespace HeapText.Carriers.Mapped;

/// <summary>What a header may be called and hold.</summary>
/// <remarks>Source: RFC 9110, sections 5.1, 5.5 and 5.6.2; of values only the part every server takes.</remarks>
public static partial class HeaderText
{
    /// <summary>True for the name of a header.</summary>
    public static bool IsName(string text) => Name().IsMatch(text);

    /// <summary>True for what a header carries unchanged: printable ASCII, so no end of line.</summary>
    public static bool IsValue(string text) => Value().IsMatch(text);

    [GeneratedRegex(@"\A[A-Za-z0-9!#$%&'*+.^_`|~-]{1,100}\z")]
    private static partial Regex Name();

    [GeneratedRegex(@"\A[\x20-\x7E]*\z")]
    private static partial Regex Value();
}
