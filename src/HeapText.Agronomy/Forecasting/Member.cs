namespace HeapText.Agronomy.Forecasting;

/// <summary>One of the heaps that a recipe may turn out to be: multipliers of what is known worst.</summary>
/// <param name="Decay">Of all decay rates. [-]</param>
/// <param name="Draught">Of the air drawn up. [-]</param>
/// <param name="Loss">Of conduction to the outside. [-]</param>
/// <param name="Wetness">Of the water that materials bring. [-]</param>
/// <param name="Settling">Of the settling. [-]</param>
/// <param name="Prior">Share of heaps that turn out so. [-]</param>
internal readonly record struct Member(
    double Decay, double Draught, double Loss, double Wetness, double Settling, double Prior)
{
    /// <summary>The heap as described, eight and their mirror images, and two that fail.</summary>
    /// <remarks>
    /// <code>multiplier = exp(s z);  s = 0.35, 0.6, 0.25, 0.12, 0.25</code>
    /// z middles of eight equal slices of the normal distribution, each used once a column (a Latin hypercube), the
    /// columns shuffled until no two correlate beyond 0.2; the mirror images make the middle the heap as described. A
    /// fixed table, so that the same heap always gets the same forecast. The two that fail stand for heaps built
    /// unlike the recipe: hardly rotting and airy, or slow and dry. Spreads and shares chosen.
    /// </remarks>
    internal static IReadOnlyList<Member> All { get; } = Build();

    private static Member[] Build()
    {
        const double usual = 0.94 / 17, failed = 0.03;
        double[] middles = [-1.53, -0.89, -0.49, -0.16, 0.16, 0.49, 0.89, 1.53];
        int[][] rows =
        [
            [0, 3, 4, 5, 0],
            [1, 6, 2, 7, 5],
            [2, 5, 3, 0, 6],
            [3, 0, 5, 4, 2],
            [4, 1, 6, 3, 7],
            [5, 4, 0, 1, 3],
            [6, 7, 7, 2, 1],
            [7, 2, 1, 6, 4],
        ];
        List<Member> all = [new Member(1, 1, 1, 1, 1, usual)];
        foreach (var row in rows)
        {
            all.Add(Spread(row, 1));
            all.Add(Spread(row, -1));
        }

        all.Add(new Member(0.15, 3, 1, 1, 1, failed));
        all.Add(new Member(0.4, 1, 1, 0.6, 1, failed));
        return [.. all];

        Member Spread(int[] row, int side) => new(
            Math.Exp(0.35 * side * middles[row[0]]),
            Math.Exp(0.6 * side * middles[row[1]]),
            Math.Exp(0.25 * side * middles[row[2]]),
            Math.Exp(0.12 * side * middles[row[3]]),
            Math.Exp(0.25 * side * middles[row[4]]),
            usual);
    }
}
