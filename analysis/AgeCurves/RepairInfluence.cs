namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Sum over appliances of squared influence on the mean number of repairs. An appliance at risk without a repair
/// loses the same amount as all others, so the loss is kept once and an appliance is touched only when it enters,
/// leaves or is repaired: the work grows with the rows, not with rows times ages.
/// </summary>
internal sealed class RepairInfluence(int units)
{
    private readonly double[] _value = new double[units];
    private readonly double[] _lossAtTouch = new double[units];
    private double _loss;
    private double _sumAtRisk;
    private double _squares;

    /// <summary>Sum of squared influences so far.</summary>
    public double Variance => Math.Max(0, _squares);

    public void Enter(int unit)
    {
        _lossAtTouch[unit] = _loss;
        _sumAtRisk += _value[unit];
    }

    public void Leave(int unit)
    {
        Touch(unit);
        _sumAtRisk -= _value[unit];
    }

    /// <summary>Adds (d_i - d/n)/n to every appliance at risk.</summary>
    public void Step(long atRisk, ReadOnlySpan<(double Age, int Unit)> repairs)
    {
        double n = atRisk;
        double perUnit = repairs.Length / n;
        double lost = perUnit / n;
        _squares += -2 * lost * _sumAtRisk + n * lost * lost;
        _sumAtRisk -= n * lost;
        _loss += lost;
        for (int i = 0; i < repairs.Length;)
        {
            int unit = repairs[i].Unit;
            int count = 0;
            for (; i < repairs.Length && repairs[i].Unit == unit; i++)
            {
                count++;
            }

            Touch(unit);
            double gained = count / n;
            _squares += 2 * gained * _value[unit] + gained * gained;
            _value[unit] += gained;
            _sumAtRisk += gained;
        }
    }

    private void Touch(int unit)
    {
        _value[unit] -= _loss - _lossAtTouch[unit];
        _lossAtTouch[unit] = _loss;
    }
}
