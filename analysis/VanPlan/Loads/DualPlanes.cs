namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A pair of prices and the dual's lower bound there.</summary>
internal readonly record struct DualPoint(double PerCent, double PerSpace, double Value);

/// <summary>The loads met so far as planes over the prices; their upper envelope lies below the dual.</summary>
internal sealed class DualPlanes(LoadLimits limits)
{
    private const int Halvings = 100;
    private readonly List<(double Value, double Money, double Space)> _planes = [];

    /// <summary>Adds a load's plane.</summary>
    public void Add(PricedLoad load) => _planes.Add(Plane(load));

    /// <summary>Height of a load's plane at a point.</summary>
    public double At(PricedLoad load, DualPoint at)
    {
        var (value, money, space) = Plane(load);
        return value + (at.PerCent * money) + (at.PerSpace * space);
    }

    /// <summary>The lowest point of the envelope over prices of 0 or more.</summary>
    public DualPoint Least()
    {
        DualPoint free = LeastAt(0, out double slope);
        if (double.IsInfinity(limits.Space) || slope >= 0)
        {
            return free;
        }

        double low = 0;
        double high = 1e-6;
        DualPoint best = free;
        while (LeastAt(high, out slope) is var at && slope < 0 && high < 1e12)
        {
            best = at;
            (low, high) = (high, high * 8);
        }

        for (int i = 0; i < Halvings && high - low > 1e-15 * high; i++)
        {
            double middle = (low + high) / 2;
            DualPoint at2 = LeastAt(middle, out slope);
            best = at2.Value < best.Value ? at2 : best;
            (low, high) = slope < 0 ? (middle, high) : (low, middle);
        }

        return best;
    }

    private (double Value, double Money, double Space) Plane(PricedLoad load) =>
        (load.Value, limits.BudgetCents - load.CostCents, double.IsInfinity(limits.Space) ? 0 : limits.Space - load.Space);

    /// <summary>Lowest point along the price of money: walks from plane to plane, each step to where a steeper one crosses.</summary>
    private DualPoint LeastAt(double perSpace, out double slope)
    {
        double price = 0;
        int on = Top(0, perSpace);
        int before = on;
        while (_planes[on].Money < 0)
        {
            int next = -1;
            double nearest = double.PositiveInfinity;
            for (int k = 0; k < _planes.Count; k++)
            {
                double turn = _planes[k].Money - _planes[on].Money;
                double cross = turn > 0 ? (Height(on, perSpace) - Height(k, perSpace)) / turn : double.PositiveInfinity;
                if (cross < nearest || (cross == nearest && next >= 0 && _planes[k].Money > _planes[next].Money))
                {
                    (next, nearest) = (k, cross);
                }
            }

            price = Math.Max(nearest, price);
            (before, on) = (on, next);
        }

        slope = Slope(before, on);
        return new DualPoint(price, perSpace, Height(on, perSpace) + (price * _planes[on].Money));
    }

    /// <summary>Slope of the minimum as the price of space rises: of the mix of the two planes that spends just the money.</summary>
    private double Slope(int before, int on)
    {
        if (before == on)
        {
            return _planes[on].Space;
        }

        double share = _planes[on].Money / (_planes[on].Money - _planes[before].Money);
        return (share * _planes[before].Space) + ((1 - share) * _planes[on].Space);
    }

    private int Top(double price, double perSpace)
    {
        int top = 0;
        for (int k = 1; k < _planes.Count; k++)
        {
            double lead = Height(k, perSpace) + (price * _planes[k].Money) - Height(top, perSpace) - (price * _planes[top].Money);
            top = lead > 0 || (lead == 0 && _planes[k].Money > _planes[top].Money) ? k : top;
        }

        return top;
    }

    private double Height(int plane, double perSpace) => _planes[plane].Value + (perSpace * _planes[plane].Space);
}
