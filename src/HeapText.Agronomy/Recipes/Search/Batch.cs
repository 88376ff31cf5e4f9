namespace HeapText.Agronomy.Recipes.Search;

/// <summary>So many half measures of each ingredient a round, so many rounds.</summary>
internal sealed record Batch(IReadOnlyList<Ingredient> Ingredients, int[] Halves, int Rounds)
{
    internal double Litres => Rounds * Sum((part, halves) => part.Litres * halves);

    internal double Mass => Rounds * Sum((part, halves) => part.Mass * halves);

    internal double Dry => Rounds * Sum((part, halves) => part.Dry * halves);

    internal double Nitrogen => Rounds * Sum((part, halves) => part.Nitrogen * halves);

    internal double CarbonNitrogen => Rounds * Sum((part, halves) => part.Carbon * halves) / Nitrogen;

    internal double Sum(Func<Ingredient, int, double> value)
    {
        var sum = 0.0;
        for (var j = 0; j < Halves.Length; j++)
        {
            sum += value(Ingredients[j], Halves[j]);
        }

        return sum;
    }
}
