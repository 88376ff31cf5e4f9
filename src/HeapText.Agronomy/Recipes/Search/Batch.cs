namespace HeapText.Agronomy.Recipes.Search;

/// <summary>So many half measures of each ingredient a round, so many rounds.</summary>
internal sealed record Batch(IReadOnlyList<Ingredient> Ingredients, int[] Halves, int Rounds)
{
    internal double Litres => Rounds * Sum((part, halves) => part.Litres * halves);

    internal double Mass => Rounds * Sum((part, halves) => part.Mass * halves);

    internal double Dry => Rounds * Sum((part, halves) => part.Dry * halves);

    internal double Nitrogen => Rounds * Sum((part, halves) => part.Food.Nitrogen * halves);

    internal double CarbonNitrogen => RatioOf(part => part.Food);

    /// <summary>C/N as the materials vary together, all low or all high, by the wider of two readings.</summary>
    internal RatioRange CarbonNitrogenRange => new(
        Math.Min(RatioOf(part => part.Varied.LowByCarbon), RatioOf(part => part.Varied.LowByNitrogen)),
        Math.Max(RatioOf(part => part.Varied.HighByCarbon), RatioOf(part => part.Varied.HighByNitrogen)));

    internal double Sum(Func<Ingredient, int, double> value)
    {
        var sum = 0.0;
        for (var j = 0; j < Halves.Length; j++)
        {
            sum += value(Ingredients[j], Halves[j]);
        }

        return sum;
    }

    private double RatioOf(Func<Ingredient, Food> food)
    {
        var (carbon, nitrogen) = (0.0, 0.0);
        for (var j = 0; j < Halves.Length; j++)
        {
            var half = food(Ingredients[j]);
            carbon += half.Carbon * Halves[j];
            nitrogen += half.Nitrogen * Halves[j];
        }

        return carbon / nitrogen;
    }
}
