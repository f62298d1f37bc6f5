namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// A van is restocked to its plan every so many days. What was used since the last restocking is ordered then and is
/// aboard after the part's lead time, before that day's first job.
/// </summary>
/// <param name="ReviewDays">Days between two restockings, 1 or more.</param>
/// <param name="LeadDays">Lead time of each part in days, 0 or more; 0: from the shop's shelf, at once.</param>
public sealed record RestockRule(int ReviewDays, IReadOnlyList<int> LeadDays)
{
    /// <summary>Day a piece used on a day is replaced, counted from the start of the replay.</summary>
    public int BackAboard(int day, int part) => (((day / ReviewDays) + 1) * ReviewDays) + LeadDays[part];
}
