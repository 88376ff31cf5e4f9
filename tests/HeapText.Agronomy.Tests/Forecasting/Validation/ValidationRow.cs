namespace HeapText.Agronomy.Tests.Forecasting.Validation;

/// <summary>One row of measured behaviour, against what the model says of it.</summary>
internal sealed record ValidationRow
{
    /// <summary>Name of the plot's file.</summary>
    internal required string Key { get; init; }

    internal required string Study { get; init; }

    internal required string Reported { get; init; }

    /// <summary>What the study does not say and was chosen before the run.</summary>
    internal required string Assumed { get; init; }

    /// <summary>Whether any constant was set with this row in view.</summary>
    internal bool IsFitted { get; init; }

    internal required IReadOnlyList<Series> Series { get; init; }

    internal required IReadOnlyList<Box> Boxes { get; init; }

    internal string Axis { get; init; } = "core temperature, °C";

    internal double Least { get; init; } = 10;

    internal double Most { get; init; } = 80;

    internal required IReadOnlyList<Claim> Claims { get; init; }

    /// <summary>Why it hits or misses.</summary>
    internal required string Discussion { get; init; }
}
