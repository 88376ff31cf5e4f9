namespace HeapText.Agronomy.Materials;

/// <summary>A figure as it varies from farm to farm, in the unit of the member that holds it.</summary>
/// <param name="Low">Low end of what is met.</param>
/// <param name="Typical">The figure used; never below <paramref name="Low"/>.</param>
/// <param name="High">High end of what is met; never below <paramref name="Typical"/>.</param>
public sealed record FigureRange(double Low, double Typical, double High);
