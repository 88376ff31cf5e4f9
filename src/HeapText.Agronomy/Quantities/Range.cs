using System.Runtime.CompilerServices;

namespace HeapText.Agronomy.Quantities;

/// <summary>The checks the factories of quantities share.</summary>
internal static class Range
{
    internal static double Amount(double value, string name) =>
        double.IsFinite(value) && value >= 0
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "Must be a finite number of 0 or more.");

    internal static double Within(
        double value, double most, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= 0 && value <= most
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"Must be from 0 to {most}.");
}
