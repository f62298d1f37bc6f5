namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// From which age on a left-truncated curve can be told. An early risk set of one or two would push survival to
/// nought for ever, so the curve is given conditional on having reached a steady age.
/// </summary>
internal static class ConditionalStart
{
    /// <summary>Fewest appliances at risk on which a step may rest.</summary>
    public const int FewestAtRisk = 5;

    /// <summary>
    /// The last age with a failure, before the risk set is at its largest, at which fewer than
    /// <paramref name="fewest"/> were at risk. Null: none, the curve can be told from its beginning.
    /// </summary>
    public static double? Find(AgeLedger ledger, int fewest = FewestAtRisk)
    {
        RiskSet[] sets = [.. ledger.RiskSets()];
        long largest = sets.Length == 0 ? 0 : sets.Max(s => s.AtRisk);
        int peak = Array.FindIndex(sets, s => s.AtRisk == largest);
        for (int i = peak - 1; i >= 0; i--)
        {
            if (sets[i].AtRisk < fewest)
            {
                return sets[i].Age;
            }
        }

        return null;
    }
}
