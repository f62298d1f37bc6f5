namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>A part a van may carry.</summary>
/// <param name="Number">Current part number; breaks ties.</param>
/// <param name="CostCents">Price of one piece in hundredths of the currency, 0 or more.</param>
/// <param name="Space">Space units of one piece, 0 or more.</param>
/// <param name="MaxUnits">Most pieces one van may carry; 0: stays off the vans.</param>
/// <param name="UnitCharges">
/// What carrying the first, second, ... piece costs in the unit of the objective (holding, loss on pieces that go
/// stale); the last value holds for every further piece. Empty: nothing.
/// </param>
public sealed record LoadPart(string Number, long CostCents, double Space, int MaxUnits, IReadOnlyList<double> UnitCharges)
{
    /// <summary>A part whose carrying costs nothing beyond its price.</summary>
    public LoadPart(string number, long costCents, double space, int maxUnits)
        : this(number, costCents, space, maxUnits, [])
    {
    }

    /// <summary>Charge of the piece with that count, counted from 1.</summary>
    internal double Charge(int unit) => UnitCharges.Count == 0 ? 0 : UnitCharges[Math.Min(unit, UnitCharges.Count) - 1];
}
