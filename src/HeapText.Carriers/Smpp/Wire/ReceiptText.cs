using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace HeapText.Carriers.Smpp.Wire;

/// <summary>What a receipt says in its text; null where it does not say it.</summary>
/// <remarks>
/// Source: SMPP 3.4, appendix B, from memory: <c>id:IIIIIIIIII sub:SSS dlvrd:DDD submit date:YYMMDDhhmm done
/// date:YYMMDDhhmm stat:DDDDDDD err:E Text: ...</c>, which peers write in every order and case, and with seconds.
/// </remarks>
internal sealed partial record ReceiptText(string? Id, ReceiptState State, LocalDateTime? DoneAt, string? Error)
{
    private const string Names = @"(?:id|sub|dlvrd|submit\s*date|done\s*date|stat|err|text)";

    // A state is known by as many letters as tell it apart: some peers cut the names, some write them out.
    private const int TellingLetters = 5;

    private static readonly LocalDateTimePattern[] DoneForms =
    [
        FormOf("yyMMddHHmm"),
        FormOf("yyMMddHHmmss"),
    ];

    /// <summary>Reads any text; one that is no receipt gives no id.</summary>
    public static ReceiptText Read(string text)
    {
        // The message's own words come last, and must not be taken for fields; unless they come first.
        var own = OwnWords().Match(text);
        var fields = FieldsIn(own.Success ? text[..own.Index] : text);
        if (own.Success && !fields.ContainsKey("id") && !fields.ContainsKey("stat")) fields = FieldsIn(text);
        return new ReceiptText(
            fields.GetValueOrDefault("id"),
            StateOf(fields.GetValueOrDefault("stat")),
            DoneOf(fields.GetValueOrDefault("donedate")),
            fields.GetValueOrDefault("err") is { } error && error.AsSpan().ContainsAnyExcept('0') ? error : null);
    }

    private static Dictionary<string, string> FieldsIn(string text)
    {
        var fields = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (Match field in Field().Matches(text))
            if (field.Groups["value"].Success)
                fields[Spaces().Replace(field.Groups["name"].Value, "")] = field.Groups["value"].Value;
        return fields;
    }

    private static ReceiptState StateOf(string? written) =>
        (written is { Length: >= TellingLetters } ? written[..TellingLetters].ToUpperInvariant() : null) switch
        {
            "DELIV" => ReceiptState.Delivered,
            "EXPIR" => ReceiptState.Expired,
            "DELET" or "UNDEL" => ReceiptState.Failed,
            "REJEC" => ReceiptState.Rejected,
            "ENROU" or "ACCEP" => ReceiptState.OnTheWay,
            _ => ReceiptState.Unknown,
        };

    // Every year is of this century.
    private static LocalDateTimePattern FormOf(string pattern) =>
        LocalDateTimePattern.CreateWithInvariantCulture(pattern).WithTwoDigitYearMax(99);

    private static LocalDateTime? DoneOf(string? written)
    {
        if (written is null) return null;
        foreach (var form in DoneForms)
            if (form.Parse(written) is { Success: true } parsed) return parsed.Value;
        return null;
    }

    [GeneratedRegex(
        @"(?<!\S)(?<name>" + Names + @")\s*:(?:\s*(?!" + Names + @"\s*:)(?<value>\S+))?",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Field();

    [GeneratedRegex(@"(?<!\S)text\s*:", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex OwnWords();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
