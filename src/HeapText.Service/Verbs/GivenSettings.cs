using System.Text.RegularExpressions;

namespace HeapText.Service.Verbs;

/// <summary>Settings on the command line, as --Key=value or --Section:Key=value.</summary>
internal static partial class GivenSettings
{
    /// <summary>The first token that is no setting; null when all are.</summary>
    public static string? Stray(IEnumerable<string> tokens) =>
        tokens.FirstOrDefault(token => !Setting().IsMatch(token));

    [GeneratedRegex("^--[A-Za-z]+(:[^:=]+)*=")]
    private static partial Regex Setting();
}
