using System.Globalization;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Why a van gets no plan: its inputs are absurd, and a plan from them would do harm.</summary>
internal static class PlanRefusal
{
    /// <summary>
    /// More jobs than this that need no part, and the log's part lines are taken as not read: in this trade most jobs
    /// need one.
    /// </summary>
    public const double MostWithoutParts = 0.6;

    /// <summary>The reason in one line, or null if the van can be planned.</summary>
    public static string? Reason(PlannedVan planned)
    {
        if (planned.Usual.TotalWeight <= 0)
        {
            return "no plan: no settled job tells what this van needs yet";
        }

        if (planned.Completion(new int[planned.Target.Count]) is { } empty && empty > MostWithoutParts)
        {
            if (planned.View.JobsWithoutNumbers > planned.View.Jobs.Count)
            {
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"no plan: {planned.View.JobsWithoutNumbers:N0} finished jobs name their parts in words, or by numbers that no list has. Add the part numbers of the parts you fit");
            }

            return string.Create(
                CultureInfo.InvariantCulture,
                $"no plan: by this log, {empty * 100:0} in 100 jobs need no part, which is unlikely. Check that the column of parts used was recognized, and that its part numbers are known");
        }

        return planned.View.Parts.Count > 0 && planned.View.Parts.All(p => !p.PriceKnown)
            ? "no plan: no prices are known for the parts, so we cannot plan to a budget. Add a price list, or orders with prices"
            : null;
    }
}
