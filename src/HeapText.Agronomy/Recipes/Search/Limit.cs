namespace HeapText.Agronomy.Recipes.Search;

/// <summary>One limit on the columns: <c>Most − Range ≤ Σ weight × column ≤ Most</c>.</summary>
internal sealed record Limit(double[] Weights, double Most, double Range = double.PositiveInfinity);
