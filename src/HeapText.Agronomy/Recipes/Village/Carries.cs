namespace HeapText.Agronomy.Recipes.Village;

/// <summary>Some of a good carried from one household to another.</summary>
internal readonly record struct Carry(int From, int To, int Good, int Amount);

/// <summary>Who has to carry what to whom for the households to end with certain stocks.</summary>
internal static class Carries
{
    /// <summary>Litres that change hands.</summary>
    internal static double LitresOf(Goods goods, IReadOnlyList<double[]> before, IReadOnlyList<double[]> after) =>
        before.Zip(after, (own, end) => Enumerable.Range(0, own.Length)
            .Sum(good => Math.Max(0, end[good] - own[good]) * goods.Carried[good])).Sum();

    /// <summary>By giver, receiver and good; large givers and large receivers meet first, so that few walks are needed.
    /// </summary>
    internal static List<Carry> Of(IReadOnlyList<double[]> before, IReadOnlyList<double[]> after)
    {
        var goods = before.Count == 0 ? 0 : before[0].Length;
        return
        [
            .. Enumerable.Range(0, goods)
                .SelectMany(good => Of(
                    good, [.. after.Zip(before, (end, own) => (int)Math.Round(end[good] - own[good]))]))
                .OrderBy(carry => carry.From).ThenBy(carry => carry.To).ThenBy(carry => carry.Good),
        ];
    }

    private static IEnumerable<Carry> Of(int good, int[] gains)
    {
        var households = Enumerable.Range(0, gains.Length).ToList();
        var givers = new Queue<int>(households.Where(h => gains[h] < 0).OrderBy(h => gains[h]));
        var receivers = households.Where(h => gains[h] > 0).OrderByDescending(h => gains[h]).ToList();
        foreach (var to in receivers)
        {
            while (gains[to] > 0 && givers.TryPeek(out var from))
            {
                var amount = Math.Min(gains[to], -gains[from]);
                (gains[to], gains[from]) = (gains[to] - amount, gains[from] + amount);
                if (gains[from] == 0)
                {
                    givers.Dequeue();
                }

                yield return new Carry(from, to, good, amount);
            }
        }
    }
}
