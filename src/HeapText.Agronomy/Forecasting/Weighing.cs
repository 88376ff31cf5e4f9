namespace HeapText.Agronomy.Forecasting;

/// <summary>Reads off values below which a share of weighted heaps lies.</summary>
internal sealed class Weighing(double[] weights)
{
    private readonly double[] _values = new double[weights.Length];
    private readonly double[] _weights = new double[weights.Length];

    /// <summary>The smallest value at which the weights so far reach the share.</summary>
    internal double Quantile(double share)
    {
        const double rounding = 1e-12;
        var sum = 0.0;
        for (var i = 0; i < _values.Length; i++)
        {
            sum += _weights[i];
            if (sum >= share - rounding) return _values[i];
        }

        return _values[^1];
    }

    /// <summary>Takes in one value of each heap.</summary>
    internal Weighing Of(IReadOnlyList<HeapHistory> histories, Func<HeapHistory, double> value)
    {
        for (var i = 0; i < _values.Length; i++) _values[i] = value(histories[i]);
        weights.CopyTo(_weights, 0);
        Array.Sort(_values, _weights);
        return this;
    }
}
