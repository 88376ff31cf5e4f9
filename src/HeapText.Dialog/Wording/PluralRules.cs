using System.Globalization;
using System.Text.RegularExpressions;

namespace HeapText.Dialog.Wording;

/// <summary>Which plural form a number takes in a language, by rules such as "one: i = 1 and v = 0".</summary>
/// <remarks>
/// Source: Unicode Technical Standard 35, part 3, "Language Plural Rules"; the rules of each language are those of the
/// Unicode CLDR, from memory. Of its operands this knows n (the number), i (its whole part), v and w (how many decimals
/// it has) and f and t (the decimals as a number), which are enough for numbers that are not written as 1 million.
/// </remarks>
public sealed partial class PluralRules
{
    /// <summary>The form of every number that no rule takes.</summary>
    public const string Other = "other";

    /// <summary>The forms that a language may tell apart, beside <see cref="Other"/>.</summary>
    internal static readonly string[] Known = ["zero", "one", "two", "few", "many"];

    private readonly List<(string Category, Relation[][] AnyOfAll)> _rules = [];

    /// <summary>The forms a word has in this language.</summary>
    public IEnumerable<string> Categories => _rules.Select(rule => rule.Category).Append(Other);

    /// <summary>Adds a rule; false when it cannot be read, and then nothing is added.</summary>
    internal bool TryAdd(string category, string rule)
    {
        if (!Known.Contains(category)) return false;
        List<Relation[]> anyOfAll = [];
        foreach (var all in rule.Split(" or "))
        {
            Relation[] read = [.. all.Split(" and ").Select(Relation.Read).OfType<Relation>()];
            if (read.Length < all.Split(" and ").Length) return false;
            anyOfAll.Add(read);
        }
        _rules.Add((category, [.. anyOfAll]));
        return true;
    }

    /// <summary>The form for a number, which is not negative.</summary>
    public string CategoryOf(decimal number)
    {
        foreach (var (category, anyOfAll) in _rules)
            if (anyOfAll.Any(all => all.All(relation => relation.Holds(number)))) return category;
        return Other;
    }

    /// <summary>Such as "i % 10 = 2..4": an operand, what it is divided by, and the values it may have.</summary>
    private sealed record Relation(char Operand, decimal? Modulus, bool Negated, (decimal Low, decimal High)[] Ranges)
    {
        public static Relation? Read(string text)
        {
            if (Form().Match(text.Trim()) is not { Success: true } match) return null;
            var ranges = match.Groups["ranges"].Value.Split(',').Select(range => range.Split(".."))
                .Select(ends => (Number(ends[0]), Number(ends[^1]))).ToArray();
            var modulus = match.Groups["modulus"] is { Success: true } by ? Number(by.Value) : (decimal?)null;
            if (modulus == 0) return null;
            return new Relation(match.Groups["operand"].Value[0], modulus, match.Groups["not"].Success, ranges);
        }

        public bool Holds(decimal number)
        {
            var value = ValueIn(number);
            if (Modulus is { } modulus) value %= modulus;
            return Ranges.Any(range =>
                decimal.IsInteger(value) && range.Low <= value && value <= range.High) != Negated;
        }

        private decimal ValueIn(decimal number)
        {
            var written = number.ToString("0.#########", CultureInfo.InvariantCulture);
            var decimals = written.Contains('.', StringComparison.Ordinal) ? written[(written.IndexOf('.') + 1)..] : "";
            return Operand switch
            {
                'n' => number,
                'i' => decimal.Truncate(number),
                'v' or 'w' => decimals.Length,
                _ => decimals.Length == 0 ? 0 : Number(decimals),
            };
        }

        private static decimal Number(string digits) =>
            decimal.Parse(digits.Trim(), NumberStyles.None, CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^(?<operand>[nivwft])\s*(%\s*(?<modulus>\d{1,6})\s*)?(?<not>!)?=\s*"
        + @"(?<ranges>\d{1,9}(\.\.\d{1,9})?(\s*,\s*\d{1,9}(\.\.\d{1,9})?)*)$")]
    private static partial Regex Form();
}
