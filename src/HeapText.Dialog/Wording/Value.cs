using NodaTime;

namespace HeapText.Dialog.Wording;

/// <summary>What fills a placeholder, before it is put into words.</summary>
public abstract record Value
{
    private Value() { }

    public sealed record Number(int Figure) : Value;

    /// <summary>A number of things, by the key of the things in the part <c>counts</c> of text.yml.</summary>
    public sealed record Count(string Key, decimal Amount) : Value;

    /// <summary>Which one in a row, from 1.</summary>
    public sealed record Ordinal(int Place) : Value;

    public sealed record Buckets(decimal Amount) : Value;

    public sealed record Metres(double Length) : Value;

    public sealed record Date(LocalDate Day) : Value;

    public sealed record Hour(int HourOfDay) : Value;

    public sealed record Name(string Text) : Value;

    public sealed record Material(string Key) : Value;

    public sealed record Materials(IReadOnlyList<string> Keys) : Value
    {
        /// <summary>How many more there are that are not named.</summary>
        public int LeftOut { get; init; }
    }

    /// <summary>Words as the farmer wrote them, of up to <see cref="Phrasebook.LongestName"/> letters.</summary>
    public sealed record Words(IReadOnlyList<string> Written) : Value
    {
        /// <summary>How many more there are that are not named.</summary>
        public int LeftOut { get; init; }
    }

    public sealed record Portions(IReadOnlyList<Portion> Items) : Value;

    public sealed record Measure(string Key) : Value;

    /// <summary>An amount in a measure, of something that is named beside it.</summary>
    public sealed record Measured(decimal Amount, string Unit) : Value;

    public sealed record Cause(string Key) : Value;

    /// <summary>What to do, in order.</summary>
    public sealed record Actions(IReadOnlyList<string> Keys) : Value;

    public sealed record Crop(string Key) : Value;

    public sealed record Money(double Amount, string Currency) : Value
    {
        /// <summary>Most letters of a currency in a message.</summary>
        public const int LongestCurrency = 8;
    }

    /// <summary>Heaps that stand, each to be chosen by its own number.</summary>
    public sealed record Heaps(IReadOnlyList<(int Number, LocalDate BuiltOn)> Items) : Value;

    /// <summary>Choices, numbered from 1.</summary>
    public sealed record Choices(IReadOnlyList<Value> Items) : Value;

    /// <summary>How languages offer themselves, each in a sentence of its own.</summary>
    public sealed record LanguageHints(IReadOnlyList<string> Languages) : Value;
}
