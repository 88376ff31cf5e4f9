using System.Globalization;

namespace HeapText.Agronomy.Quantities;

/// <summary>A part of a whole, from 0 to 1. The default is none.</summary>
public readonly record struct Fraction : IComparable<Fraction>
{
    private Fraction(double value) => Value = value;

    /// <summary>None of it.</summary>
    public static Fraction Zero => default;

    /// <summary>The part, 0 to 1.</summary>
    public double Value { get; }

    /// <summary>The part in per cent, 0 to 100. [%]</summary>
    public double Percent => Value * 100;

    /// <summary>What is left of the whole.</summary>
    public Fraction Rest() => new(1 - Value);

    /// <summary>A part of one.</summary>
    /// <param name="value">0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1, or not a number.</exception>
    public static Fraction FromValue(double value) => new(Range.Within(value, 1, nameof(value)));

    /// <summary>A part of a hundred.</summary>
    /// <param name="percent">0 to 100. [%]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100, or not a number.</exception>
    public static Fraction FromPercent(double percent) => new(Range.Within(percent, 100, nameof(percent)) / 100);

    /// <summary>A part of a part.</summary>
    public static Fraction operator *(Fraction left, Fraction right) => new(left.Value * right.Value);

    /// <summary>Whether the left part is the smaller.</summary>
    public static bool operator <(Fraction left, Fraction right) => left.Value < right.Value;

    /// <summary>Whether the left part is the larger.</summary>
    public static bool operator >(Fraction left, Fraction right) => left.Value > right.Value;

    /// <summary>Whether the left part is no larger.</summary>
    public static bool operator <=(Fraction left, Fraction right) => left.Value <= right.Value;

    /// <summary>Whether the left part is no smaller.</summary>
    public static bool operator >=(Fraction left, Fraction right) => left.Value >= right.Value;

    /// <summary>The value with its unit, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Percent} %");

    /// <inheritdoc/>
    public int CompareTo(Fraction other) => Value.CompareTo(other.Value);
}
