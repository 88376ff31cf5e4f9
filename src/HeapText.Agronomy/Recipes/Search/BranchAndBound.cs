namespace HeapText.Agronomy.Recipes.Search;

/// <summary>Exact search for the whole-number point of most worth inside the limits, depth first.</summary>
internal sealed class BranchAndBound
{
    private const double Whole = 1e-6;

    // A value this far above a whole number or less is rounded down first: limits are mostly upper ones.
    private const double DownBelow = 0.7, DownBelowWhenUpFirst = 0.2;

    private readonly int _wholes;
    private readonly List<LinearProgram> _stack = [];
    private readonly double[] _point;

    /// <summary>Prepares a search.</summary>
    /// <param name="program">The limits and worths, fresh.</param>
    /// <param name="columns">How many columns there are.</param>
    /// <param name="wholes">How many columns, from the first, must be whole numbers.</param>
    internal BranchAndBound(LinearProgram program, int columns, int wholes)
    {
        _wholes = wholes;
        _stack.Add(program);
        _point = new double[columns];
    }

    /// <summary>Worth that a point must exceed to be of interest; grows as points are found.</summary>
    internal required double Threshold { get; set; }

    /// <summary>Called with each whole-number point that may exceed the threshold; returns the new threshold.</summary>
    internal required Func<double[], double> Found { get; init; }

    /// <summary>Nodes still allowed; the search is exact unless this runs out.</summary>
    internal int NodesLeft { get; set; } = int.MaxValue;

    /// <summary>Whether to round up before down, which walks the same tree in another order.</summary>
    internal bool UpFirst { get; init; }

    internal void Run() => Explore(0);

    private void Explore(int depth)
    {
        var program = _stack[depth];
        if (NodesLeft-- <= 0)
        {
            return;
        }

        var outcome = program.Maximise(Threshold);
        if (outcome is LinearProgram.Outcome.Infeasible or LinearProgram.Outcome.CutOff)
        {
            return;
        }

        var column = outcome == LinearProgram.Outcome.Best ? MostSplit(program) : Widest(program);
        if (column >= 0)
        {
            Branch(depth, column, outcome == LinearProgram.Outcome.Best);
        }
        else if (outcome == LinearProgram.Outcome.Best)
        {
            Threshold = Found(Read(program));
        }
    }

    private void Branch(int depth, int column, bool atValue)
    {
        var parent = _stack[depth];
        var (lower, upper) = (parent.Lower(column), parent.Upper(column));
        var value = atValue ? parent.Value(column) : ((lower + upper) / 2) - Whole;
        var floor = Math.Clamp(Math.Floor(value), lower, upper - 1);
        var downFirst = value - floor < (UpFirst ? DownBelowWhenUpFirst : DownBelow);
        Descend(depth, column, downFirst ? lower : floor + 1, downFirst ? floor : upper);
        if (parent.Objective > Threshold)
        {
            Descend(depth, column, downFirst ? floor + 1 : lower, downFirst ? upper : floor);
        }
    }

    private void Descend(int depth, int column, double lower, double upper)
    {
        if (_stack.Count == depth + 1)
        {
            _stack.Add(_stack[depth].EmptyCopy());
        }

        var child = _stack[depth + 1];
        child.CopyFrom(_stack[depth]);
        child.Bound(column, lower, upper);
        Explore(depth + 1);
    }

    private int MostSplit(LinearProgram program)
    {
        var (found, most) = (-1, Whole);
        for (var j = 0; j < _wholes; j++)
        {
            var value = program.Value(j);
            var split = Math.Abs(value - Math.Round(value));
            if (split > most)
            {
                (found, most) = (j, split);
            }
        }

        return found;
    }

    private int Widest(LinearProgram program)
    {
        var (found, most) = (-1, 0.0);
        for (var j = 0; j < _wholes; j++)
        {
            if (program.Upper(j) - program.Lower(j) > most)
            {
                (found, most) = (j, program.Upper(j) - program.Lower(j));
            }
        }

        return found;
    }

    private double[] Read(LinearProgram program)
    {
        for (var j = 0; j < _point.Length; j++)
        {
            _point[j] = j < _wholes ? Math.Round(program.Value(j)) : program.Value(j);
        }

        return _point;
    }
}
