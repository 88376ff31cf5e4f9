using HeapText.Agronomy.Recipes.Search;

namespace HeapText.Agronomy.Recipes.Village;

/// <summary>
/// Finds who ends with what, so that certain households can build and least is carried. Exact unless the nodes run out:
/// where the program allows what whole layers do not, one of the goods has to grow, and each is tried.
/// </summary>
internal sealed class ShareSearch
{
    private const double Whole = 1e-6;

    private readonly Goods _goods;
    private readonly ShareModel _model;
    private readonly List<LinearProgram> _stack = [];
    private readonly double _grain;

    /// <summary>Prepares a search.</summary>
    /// <param name="goods">All goods.</param>
    /// <param name="model">The households that shall build, and what is in reach.</param>
    /// <param name="carried">Only plans that carry less are of interest. [L]</param>
    internal ShareSearch(Goods goods, ShareModel model, double carried)
    {
        (_goods, _model, Carried) = (goods, model, carried);
        _grain = VolumeSums.Grain([.. goods.Carried]);
        _stack.Add(model.Write());
    }

    /// <summary>Least carried so far. [L]</summary>
    internal double Carried { get; private set; }

    /// <summary>Stocks that the builders end with; null while none is found.</summary>
    internal double[][]? Stocks { get; private set; }

    /// <summary>Nodes still allowed; below 0 when they ran out.</summary>
    internal int NodesLeft { get; set; }

    internal void Run() => Explore(0);

    private void Explore(int depth)
    {
        if (NodesLeft-- <= 0)
        {
            return;
        }

        var program = _stack[depth];
        var outcome = program.Maximise(Whole - (Carried - (_grain * (1 - Whole))));
        if (outcome is LinearProgram.Outcome.Infeasible or LinearProgram.Outcome.CutOff)
        {
            return;
        }

        var split = MostSplit(program, outcome);
        if (split >= 0)
        {
            Halve(depth, split, outcome);
            return;
        }

        var stocks = Enumerable.Range(0, _model.Builders)
            .Select(b => _model.StockOf(b, u => Math.Round(program.Value(_model.Whole(b, u))))).ToArray();
        var failing = Array.FindIndex(stocks, stock => !_goods.Suffice(stock));
        if (failing >= 0)
        {
            Grow(depth, failing);
        }
        else if (stocks.Select((stock, b) => _model.CarriedTo(b, stock)).Sum() is var carried && carried < Carried)
        {
            (Carried, Stocks) = (carried, stocks);
        }
    }

    private void Halve(int depth, int column, LinearProgram.Outcome outcome)
    {
        var parent = _stack[depth];
        var (lower, upper) = (parent.Lower(column), parent.Upper(column));
        var value = outcome == LinearProgram.Outcome.Best ? parent.Value(column) : (lower + upper) / 2;
        var floor = Math.Clamp(Math.Floor(value), lower, upper - 1);
        Descend(depth, [(column, floor + 1, upper)]);
        Descend(depth, [(column, lower, floor)]);
    }

    /// <summary>One more of some good, with no more of those before it, so that no plan is met twice.</summary>
    private void Grow(int depth, int builder)
    {
        var parent = _stack[depth];
        List<(int Column, double Lower, double Upper)> bounds = [];
        for (var u = 0; u < _model.Used; u++)
        {
            var column = _model.Whole(builder, u);
            var (value, lower, upper) = (Math.Round(parent.Value(column)), parent.Lower(column), parent.Upper(column));
            if (value < upper)
            {
                Descend(depth, [.. bounds, (column, value + 1, upper)], builder);
                bounds.Add((column, lower, value));
            }
        }
    }

    private void Descend(int depth, IEnumerable<(int Column, double Lower, double Upper)> bounds, int? builder = null)
    {
        if (_stack.Count == depth + 1)
        {
            _stack.Add(_stack[depth].EmptyCopy());
        }

        var child = _stack[depth + 1];
        child.CopyFrom(_stack[depth]);
        foreach (var (column, lower, upper) in bounds)
        {
            child.Bound(column, lower, upper);
        }

        if (builder is not { } b || _goods.Suffice(_model.StockOf(b, u => child.Upper(_model.Whole(b, u)))))
        {
            Explore(depth + 1);
        }
    }

    private int MostSplit(LinearProgram program, LinearProgram.Outcome outcome)
    {
        var (found, most) = (-1, outcome == LinearProgram.Outcome.Best ? Whole : 0);
        for (var j = 0; j < _model.Builders * _model.Used; j++)
        {
            var split = outcome == LinearProgram.Outcome.Best
                ? Math.Abs(program.Value(j) - Math.Round(program.Value(j)))
                : program.Upper(j) - program.Lower(j);
            if (split > most)
            {
                (found, most) = (j, split);
            }
        }

        return found;
    }
}
