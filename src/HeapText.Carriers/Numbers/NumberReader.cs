using HeapText.Dialog.Ports;
using PhoneNumbers;

namespace HeapText.Carriers.Numbers;

/// <summary>Brings a number as a gateway writes it into E.164 form.</summary>
public static class NumberReader
{
    /// <summary>The unassigned country code practice phones use; no real line takes it.</summary>
    public const string PracticePrefix = "+999";

    private static readonly PhoneNumberUtil Plans = PhoneNumberUtil.GetInstance();

    private static readonly NumberReading Foreign =
        new NumberReading.Bad("is of a country that is not among the line's Countries");

    /// <summary>Reads a number on a real line.</summary>
    /// <param name="text">International form, with or without "+" and spaces; national form where a region is
    /// given.</param>
    /// <param name="region">Two-letter country of the line (ISO 3166-1); null takes international form only.</param>
    /// <param name="countries">Countries whose numbers the line takes; empty for all.</param>
    public static NumberReading ReadReal(string text, string? region, IReadOnlySet<string> countries)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(countries);
        var compact = Compact(text);
        if (compact.StartsWith(PracticePrefix, StringComparison.Ordinal))
            return new NumberReading.Bad(
                "is a practice number, which no real line takes; send the farmer's own number");
        try
        {
            var written = region is null && !compact.StartsWith('+') ? "+" + compact : compact;
            var parsed = Plans.Parse(written, region);
            // Possible, not valid: numbering plans grow faster than the tables, and a farmer must not be lost to that.
            if (Plans.IsPossibleNumber(parsed)
                && Msisdn.TryParse(Plans.Format(parsed, PhoneNumberFormat.E164), out var number))
                return IsOf(countries, parsed) ? new NumberReading.Good(number) : Foreign;
        }
        catch (NumberParseException)
        {
            // Said below, in one way for every fault.
        }

        return new NumberReading.Bad(region is null
            ? "is not a telephone number; write it in international form, like +256700000001"
            : $"is not a telephone number of {region} nor one in international form, like +256700000001");
    }

    /// <summary>Reads a number on the practice line.</summary>
    public static NumberReading ReadPractice(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var compact = Compact(text);
        if (!compact.StartsWith(PracticePrefix, StringComparison.Ordinal))
            return new NumberReading.Bad(
                "is not a practice number; practice phones begin with +999, like +99910000001");
        return Msisdn.TryParse(compact, out var number)
            ? new NumberReading.Good(number)
            : new NumberReading.Bad("is not a practice number; write +999 and 4 to 12 more digits, like +99910000001");
    }

    private static bool IsOf(IReadOnlySet<string> countries, PhoneNumber number)
    {
        if (countries.Count == 0) return true;
        // Several countries share a calling code; a number no plan knows counts as of any of them.
        return Plans.GetRegionCodeForNumber(number) is { } known
            ? countries.Contains(known)
            : Plans.GetRegionCodesForCountryCode(number.CountryCode).Any(countries.Contains);
    }

    private static string Compact(string text)
    {
        var kept = string.Concat(text.Where(c => c is not (' ' or '-' or '.' or '(' or ')' or '\u00A0')));
        return kept.StartsWith("00", StringComparison.Ordinal) ? "+" + kept[2..] : kept;
    }
}

/// <summary>How reading a number ended.</summary>
public abstract record NumberReading
{
    private NumberReading() { }

    /// <summary>The number.</summary>
    public sealed record Good(Msisdn Number) : NumberReading;

    /// <summary>Not a number this line takes.</summary>
    /// <param name="Why">Fault and fix, to follow the name of the field; holds no part of the number.</param>
    public sealed record Bad(string Why) : NumberReading;
}
