namespace HeapText.Agronomy.Recipes.Search;

/// <summary>
/// A small dense linear program, maximised by the bounded dual simplex method. Every column has finite bounds, so
/// columns resting on the bound their worth points to are dual feasible at once and no first phase is needed; a
/// tightened bound keeps that, which is what branching wants.
/// </summary>
internal sealed class LinearProgram
{
    private const double Feasible = 1e-7;
    private const double SmallestPivot = 1e-9;
    private const int LeastPivotsBeforeLowestIndex = 60;
    private const int LeastMostPivots = 400;

    private readonly int _rows;
    private readonly int _columns;
    private readonly double[] _tableau;
    private readonly double[] _basicValue;
    private readonly double[] _reduced;
    private readonly double[] _lower;
    private readonly double[] _upper;
    private readonly int[] _basic;
    private readonly int[] _resting;
    private readonly bool[] _atUpper;
    private readonly int[] _row;

    /// <summary>Sets up the program with every column resting on its better bound.</summary>
    /// <param name="worth">Worth of each column, to be maximised.</param>
    /// <param name="upper">Upper bound of each column; the lower is 0.</param>
    /// <param name="rows">Limits; scaled here.</param>
    internal LinearProgram(double[] worth, double[] upper, IReadOnlyList<Limit> rows)
        : this(rows.Count, worth.Length)
    {
        for (var j = 0; j < _columns; j++)
        {
            _resting[j] = j;
            _row[j] = -1;
            _upper[j] = upper[j];
            _reduced[j] = worth[j];
            _atUpper[j] = worth[j] > 0;
            Objective += worth[j] * RestingValue(j);
        }

        for (var i = 0; i < _rows; i++)
        {
            AddRow(i, rows[i]);
        }
    }

    private LinearProgram(int rows, int columns)
    {
        (_rows, _columns) = (rows, columns);
        _tableau = new double[rows * columns];
        _basicValue = new double[rows];
        _reduced = new double[columns];
        _lower = new double[rows + columns];
        _upper = new double[rows + columns];
        _basic = new int[rows];
        _resting = new int[columns];
        _atUpper = new bool[columns];
        _row = new int[rows + columns];
    }

    /// <summary>Worth where the method stands: never below the best worth of any point inside the limits.</summary>
    internal double Objective { get; private set; }

    internal LinearProgram EmptyCopy() => new(_rows, _columns);

    internal void CopyFrom(LinearProgram other)
    {
        other._tableau.AsSpan().CopyTo(_tableau);
        other._basicValue.AsSpan().CopyTo(_basicValue);
        other._reduced.AsSpan().CopyTo(_reduced);
        other._lower.AsSpan().CopyTo(_lower);
        other._upper.AsSpan().CopyTo(_upper);
        other._basic.AsSpan().CopyTo(_basic);
        other._resting.AsSpan().CopyTo(_resting);
        other._atUpper.AsSpan().CopyTo(_atUpper);
        other._row.AsSpan().CopyTo(_row);
        Objective = other.Objective;
    }

    internal double Lower(int column) => _lower[column];

    internal double Upper(int column) => _upper[column];

    /// <summary>Value of a column where the method stands.</summary>
    internal double Value(int column)
    {
        if (_row[column] >= 0)
        {
            return _basicValue[_row[column]];
        }

        return RestingValue(Array.IndexOf(_resting, column));
    }

    /// <summary>Tightens a column's bounds.</summary>
    internal void Bound(int column, double lower, double upper)
    {
        var place = _row[column] >= 0 ? -1 : Array.IndexOf(_resting, column);
        var before = place < 0 ? 0 : RestingValue(place);
        (_lower[column], _upper[column]) = (lower, upper);
        if (place >= 0)
        {
            Move(place, RestingValue(place) - before);
        }
    }

    /// <summary>Moves to the best point inside the limits.</summary>
    /// <param name="cutoff">Stop once the worth is known to be no more than this.</param>
    internal Outcome Maximise(double cutoff)
    {
        var size = _rows + _columns;
        var mostPivots = Math.Max(LeastMostPivots, 4 * size);
        for (var pivots = 0; pivots < mostPivots; pivots++)
        {
            if (Objective <= cutoff)
            {
                return Outcome.CutOff;
            }

            var lowestIndex = pivots >= Math.Max(LeastPivotsBeforeLowestIndex, size);
            var leaving = Leaving(lowestIndex);
            if (leaving < 0)
            {
                return Outcome.Best;
            }

            var rises = _basicValue[leaving] < _lower[_basic[leaving]];
            var entering = Entering(leaving, rises, lowestIndex);
            if (entering < 0)
            {
                return Outcome.Infeasible;
            }

            Pivot(leaving, entering, rises);
        }

        return Outcome.Unsettled;
    }

    private void AddRow(int i, Limit limit)
    {
        var scale = limit.Weights.Max(Math.Abs);
        var slack = _columns + i;
        (_basic[i], _row[slack], _upper[slack]) = (slack, i, limit.Range / scale);
        _basicValue[i] = limit.Most / scale;
        for (var j = 0; j < _columns; j++)
        {
            var weight = limit.Weights[j] / scale;
            _tableau[(i * _columns) + j] = weight;
            _basicValue[i] -= weight * RestingValue(j);
        }
    }

    private double RestingValue(int place) => _atUpper[place] ? _upper[_resting[place]] : _lower[_resting[place]];

    private void Move(int place, double by)
    {
        Objective += _reduced[place] * by;
        for (var i = 0; i < _rows; i++)
        {
            _basicValue[i] -= _tableau[(i * _columns) + place] * by;
        }
    }

    private int Leaving(bool lowestIndex)
    {
        var (found, worst) = (-1, Feasible);
        for (var i = 0; i < _rows; i++)
        {
            var variable = _basic[i];
            var outside = Math.Max(_lower[variable] - _basicValue[i], _basicValue[i] - _upper[variable]);
            if (outside > Feasible && (lowestIndex ? found < 0 || variable < _basic[found] : outside > worst))
            {
                (found, worst) = (i, outside);
            }
        }

        return found;
    }

    private int Entering(int leaving, bool rises, bool lowestIndex)
    {
        var row = _tableau.AsSpan(leaving * _columns, _columns);
        var (found, least) = (-1, double.PositiveInfinity);
        for (var j = 0; j < _columns; j++)
        {
            var variable = _resting[j];
            var pulls = _atUpper[j] == rises ? row[j] : -row[j];
            if (pulls <= SmallestPivot || _lower[variable] >= _upper[variable])
            {
                continue;
            }

            var loss = Math.Abs(_reduced[j]) / pulls;
            var ties = Math.Abs(loss - least) <= SmallestPivot * (1 + loss);
            var better = ties
                ? lowestIndex ? variable < _resting[found] : pulls > Math.Abs(row[found])
                : loss < least;
            if (better)
            {
                (found, least) = (j, loss);
            }
        }

        return found;
    }

    private void Pivot(int leaving, int entering, bool rises)
    {
        var row = _tableau.AsSpan(leaving * _columns, _columns);
        var pivot = row[entering];
        var outgoing = _basic[leaving];
        var bound = rises ? _lower[outgoing] : _upper[outgoing];
        var step = (_basicValue[leaving] - bound) / pivot;
        var arrival = RestingValue(entering) + step;
        Move(entering, step);
        for (var j = 0; j < _columns; j++)
        {
            row[j] /= pivot;
        }

        row[entering] = 1 / pivot;
        for (var i = 0; i < _rows; i++)
        {
            if (i != leaving)
            {
                Eliminate(_tableau.AsSpan(i * _columns, _columns), row, entering, pivot);
            }
        }

        Eliminate(_reduced, row, entering, pivot);
        (_basic[leaving], _resting[entering]) = (_resting[entering], outgoing);
        (_row[_basic[leaving]], _row[outgoing]) = (leaving, -1);
        _atUpper[entering] = !rises;
        _basicValue[leaving] = arrival;
    }

    private static void Eliminate(Span<double> target, ReadOnlySpan<double> row, int entering, double pivot)
    {
        var factor = target[entering];
        if (factor == 0)
        {
            return;
        }

        for (var j = 0; j < target.Length; j++)
        {
            target[j] -= factor * row[j];
        }

        target[entering] = -factor / pivot;
    }

    internal enum Outcome
    {
        Best,
        Infeasible,
        CutOff,
        Unsettled,
    }
}
