namespace HeapText.Agronomy.Recipes.Search;

/// <summary>
/// Finds the heap of most volume inside the limits, exactly, and the best of those like it in volume.
/// </summary>
internal sealed class HeapSearch
{
    /// <summary>The volume answered is within this of the most possible: a hair under 0.1 %.</summary>
    private const double VolumeGap = 9.9e-4;

    private const int NodesForWishes = 200;

    // The last pass, of two million nodes, takes a second or so; it is there so that every search ends.
    private const int FirstNodes = 500, NodesGrowth = 8, PassesForWishes = 2, LastPass = 4, MostNodes = 2_000_000;

    // A volume larger by no more than this is not searched for, by pass. Where the room binds, the last litres can take
    // millions of nodes to rule out, so later passes leave more; what they leave, the later wishes do not get.
    private static readonly double[] Leeways = [2e-4, 2e-4, 5e-4, 9.8e-4];

    private readonly IReadOnlyList<Ingredient> _ingredients;
    private readonly HeapRoom _room;
    private readonly HeapModel _model;

    internal HeapSearch(IReadOnlyList<Ingredient> ingredients, HeapRoom room, double mostMoisture)
    {
        (_ingredients, _room) = (ingredients, room);
        _model = new HeapModel(ingredients, mostMoisture);
    }

    /// <summary>
    /// The heap of most volume, by the later wishes among those within 0.1 %; null when there is none.
    /// </summary>
    internal Batch? Best()
    {
        var (largest, leeway) = Largest();
        return largest is null ? null : Improve(largest, largest.Litres * (1 + leeway) * (1 - VolumeGap));
    }

    /// <summary>Whether a heap of at least so many litres is possible.</summary>
    internal bool CanReach(double litres)
    {
        foreach (var (rounds, least, most, _) in Roots(litres))
        {
            var reached = false;
            new BranchAndBound(_model.ForVolume(rounds, least, most), _model.Columns, _model.Columns)
            {
                NodesLeft = MostNodes,
                Threshold = 0,
                Found = _ =>
                {
                    reached = true;
                    return double.PositiveInfinity;
                },
            }.Run();
            if (reached)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// Tries every number of rounds with few nodes before any with many: where the room binds, one number of rounds
    /// may meet it exactly at once while another takes long to prove that it cannot.
    /// </summary>
    private (Batch? Batch, double Leeway) Largest()
    {
        Batch? best = null;
        var leeway = Leeways[0];
        var open = Roots(0).OrderByDescending(root => root.Bound).ToList();
        var nodes = FirstNodes;
        for (var pass = 0; open.Count > 0; pass++)
        {
            leeway = Leeways[Math.Min(pass, Leeways.Length - 1)];
            List<Root> unsettled = [];
            foreach (var root in open)
            {
                if (root.Bound > Threshold(best, root.Rounds, leeway) && !Search(root, nodes, leeway, pass, ref best))
                {
                    var reachable = _model.Reachable(root.Rounds, root.Most);
                    unsettled.Add(root with { Most = reachable, Bound = Math.Min(root.Bound, reachable) });
                }
            }

            open = [.. unsettled.Where(root => root.Most >= root.Least)];
            nodes *= NodesGrowth;
            var unruled = open.Count > 0 && best is not null ? (open.Max(root => root.Bound) / best.Litres) - 1 : 1;
            if (pass == LastPass || (pass >= PassesForWishes && unruled <= Leeways[^1]))
            {
                return (best, Leeways[^1]);
            }
        }

        return (best, leeway);
    }

    private double Threshold(Batch? best, int rounds, double leeway) => best is null
        ? 0
        : Math.Max(best.Litres * (1 + leeway), _model.JustBelowNext(rounds, best.Litres));

    private bool Search(Root root, int nodes, double leeway, int pass, ref Batch? best)
    {
        var largest = best;
        var search = new BranchAndBound(
            _model.ForVolume(root.Rounds, root.Least, root.Most), _model.Columns, _model.Columns)
        {
            NodesLeft = nodes,
            UpFirst = pass % 2 == 1,
            Threshold = Threshold(largest, root.Rounds, leeway),
            Found = point =>
            {
                largest = ToBatch(point, root.Rounds, step: 1);
                return Threshold(largest, root.Rounds, leeway);
            },
        };
        search.Run();
        best = largest;
        return search.NodesLeft >= 0;
    }

    private Batch Improve(Batch largest, double kept)
    {
        var spoiling = _ingredients.Where(part => part.Spoils).Sum(part => 2 * part.Stock.Amount * part.Litres);
        var wishes = new Wishes(largest.Nitrogen, spoiling, _room.Bounds.HighestM);
        var best = largest;
        foreach (var (rounds, least, most, _) in Roots(kept))
        {
            for (var step = 1; step <= 2; step++)
            {
                best = Improve(best, wishes, rounds, step, least, most);
            }
        }

        return best;
    }

    private Batch Improve(Batch best, Wishes wishes, int rounds, int step, double least, double most)
    {
        new BranchAndBound(
            _model.ForWishes(rounds, least, most, step, wishes), _model.Columns + HeapModel.Misses, _model.Columns)
        {
            NodesLeft = NodesForWishes,
            Threshold = wishes.WorthOf(best) - wishes.WorthOfHeight(rounds),
            Found = point =>
            {
                var batch = ToBatch(point, rounds, step);
                best = wishes.WorthOf(batch) > wishes.WorthOf(best) ? batch : best;
                return wishes.WorthOf(best) - wishes.WorthOfHeight(rounds);
            },
        }.Run();
        return best;
    }

    /// <summary>
    /// Numbers of rounds for which a heap of at least so many litres is possible but for whole numbers.
    /// </summary>
    private IEnumerable<Root> Roots(double litres)
    {
        var last = _ingredients.Any(part => part.Litres > 0) ? HeapLimits.MostRounds : 0;
        for (var rounds = HeapLimits.FewestRounds; rounds <= last; rounds++)
        {
            if (_room.LitresOf(rounds) is not { } range || Math.Max(range.Least, litres) > range.Most)
            {
                continue;
            }

            var least = Math.Max(range.Least, litres);
            var program = _model.ForVolume(rounds, least, range.Most);
            if (program.Maximise(0) != LinearProgram.Outcome.Infeasible)
            {
                yield return new Root(rounds, least, range.Most, program.Objective);
            }
        }
    }

    private Batch ToBatch(double[] point, int rounds, int step)
    {
        var halves = new int[_model.Columns];
        for (var j = 0; j < halves.Length; j++)
        {
            halves[j] = (int)point[j] * step;
        }

        return new Batch(_ingredients, halves, rounds);
    }

    private sealed record Root(int Rounds, double Least, double Most, double Bound);
}
