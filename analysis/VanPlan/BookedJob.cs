using PartsSignal.Analysis.VanPlan.Kits;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A job already booked, with what it may need.</summary>
/// <param name="Van">Index of the van that will serve it.</param>
/// <param name="Needs">Part sets and the chance of each; the rest of the chance needs nothing from the list.</param>
public sealed record BookedJob(int Van, IReadOnlyList<(double Chance, IReadOnlyList<PartNeed> Needs)> Needs)
{
    /// <summary>
    /// As jobs of a year: a plan stands until the next restocking, so a job that is sure to come before then weighs as
    /// much as one that comes once every period.
    /// </summary>
    internal static IEnumerable<KitJob> Levels(IReadOnlyList<BookedJob> jobs, int reviewDays, double worth) =>
        jobs.SelectMany(j => j.Needs).Select(n => new KitJob(n.Chance * worth * 365.25 / reviewDays, n.Needs));
}
