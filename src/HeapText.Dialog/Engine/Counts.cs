using HeapText.Dialog.Replies;

namespace HeapText.Dialog.Engine;

/// <summary>Whole numbers that answer how many, whatever word stands beside them: "20", "about 20 steps".</summary>
internal static class Counts
{
    private const decimal Most = 1_000_000;

    /// <summary>The numbers of a text, from 0; empty when one is no whole number, or when the text says what was
    /// brought or done.</summary>
    public static IReadOnlyList<int> In(Reading reading)
    {
        var isCount = reading.Intent is Intent.Unknown or Intent.Check
            || (reading.Intent == Intent.Stock && reading.Materials.All(material => material.Measure is null));
        IReadOnlyList<decimal> numbers = reading.BareNumber is { } bare ? [bare] : isCount ? reading.Numbers : [];
        return numbers.All(number => number is >= 0 and <= Most && decimal.IsInteger(number))
            ? [.. numbers.Select(number => (int)number)]
            : [];
    }
}
