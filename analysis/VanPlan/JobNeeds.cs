using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Why a job does not tell what it needed, or that it does.</summary>
public enum NeedsKnown
{
    /// <summary>Settled, and its parts are known (none is a need too).</summary>
    Yes,

    /// <summary>Not settled by that day: not known yet, never "no part".</summary>
    StillOpen,

    /// <summary>The customer declined or the machine was not worth it: nothing was fitted.</summary>
    NotRepaired,

    /// <summary>Fixed, but a part is missing or could not be resolved.</summary>
    PartsNotTold,
}

/// <summary>What a job needed, as known on a day.</summary>
internal static class JobNeeds
{
    /// <summary>Whether the job tells.</summary>
    /// <param name="job">The job.</param>
    /// <param name="day">Only what was settled before this day counts.</param>
    public static NeedsKnown Told(ShopJob job, DateOnly day)
    {
        if (job.ClosedOn is not { } closed || closed >= day)
        {
            return NeedsKnown.StillOpen;
        }

        return job.Outcome switch
        {
            Outcome.FixedWithoutPart or Outcome.NoFaultFound => NeedsKnown.Yes,
            Outcome.FixedWithPart or Outcome.Fixed => job.Lines.Count > 0 && job.Lines.All(l => l.PartNumber is not null) ? NeedsKnown.Yes : NeedsKnown.PartsNotTold,
            Outcome.Declined or Outcome.NotWorthRepairing => NeedsKnown.NotRepaired,
            Outcome.PartOrdered => NeedsKnown.StillOpen,
            _ => NeedsKnown.PartsNotTold,
        };
    }

    /// <summary>Numbers and pieces by the arrows known on a day; a kit that was one number then stays one.</summary>
    public static IEnumerable<(string Number, int Quantity)> Then(ShopJob job, IReadOnlyDictionary<string, string> numbers) =>
        job.Outcome is Outcome.FixedWithPart or Outcome.Fixed
            ? job.Lines
                .GroupBy(l => (l.FittedNumber, Number: numbers.GetValueOrDefault(l.FittedNumber ?? "", l.FittedNumber ?? l.PartNumber!)))
                .Select(g => (g.Key.Number, Quantity: g.GroupBy(l => l.PartNumber).Max(p => p.Sum(l => l.Quantity))))
            : [];

    /// <summary>Numbers current today, and pieces.</summary>
    public static IEnumerable<(string Number, int Quantity)> Today(ShopJob job) =>
        job.Outcome is Outcome.FixedWithPart or Outcome.Fixed ? job.Lines.Select(l => (l.PartNumber!, l.Quantity)) : [];
}
