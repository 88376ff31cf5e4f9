namespace HeapText.Agronomy;

/// <summary>What is wrong with a request, for whoever wrote it; never shown to a farmer.</summary>
/// <param name="Field">Path of the field, such as <c>stock[1].amount</c>.</param>
/// <param name="Reason">What it must be, such as <c>must be 0 or more</c>.</param>
public sealed record InputFault(string Field, string Reason)
{
    /// <summary>The largest amount that can be meant. [kg, L or measures]</summary>
    public const double LargestAmount = 1e6;

    /// <summary>The same fault seen from an enclosing object.</summary>
    public InputFault Within(string outer) => this with { Field = $"{outer}.{Field}" };

    /// <inheritdoc/>
    public override string ToString() => $"{Field}: {Reason}";

    internal static InputFault? OfAmount(string field, double amount) =>
        !double.IsFinite(amount) || amount < 0 ? new InputFault(field, "must be 0 or more")
        : amount > LargestAmount ? new InputFault(field, "must be at most 1000000")
        : null;

    internal static InputFault? OfPercent(string field, double? percent) =>
        percent is null or (>= 0 and <= 100) ? null : new InputFault(field, "must be from 0 to 100");
}
