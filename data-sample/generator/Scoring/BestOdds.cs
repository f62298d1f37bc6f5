using System.Collections.Concurrent;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>Chances of components, 'none' among them; they sum to 1.</summary>
internal sealed record Odds(IReadOnlyList<(string Component, double Chance)> Shares)
{
    /// <summary>Chance of a component; 0 where it is not listed.</summary>
    public double Of(string component)
    {
        foreach ((string name, double chance) in Shares)
        {
            if (name == component)
            {
                return chance;
            }
        }

        return 0;
    }

    /// <summary>Place of a component, 1 the likeliest.</summary>
    public int RankOf(string component)
    {
        double own = Of(component);
        return 1 + Shares.Count(s => s.Chance > own);
    }
}

/// <summary>
/// The best anybody could say when a call is booked: Bayes' rule with the world's own failure rates and complaint odds,
/// summed over the families and build dates that what was typed leaves possible. History of the unit is not used.
/// </summary>
internal static class BestOdds
{
    /// <summary>Odds of the true component, and of the component the log will show once technicians' mistakes and declined repairs are through.</summary>
    public static (Odds True, Odds Recorded) For(Job job)
    {
        var truth = new SortedDictionary<string, double>(StringComparer.Ordinal);
        var recorded = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (BuildGuess guess in BuildGuess.All(job))
        {
            Add(job, guess, truth, recorded);
        }

        return (Normal(truth), Normal(recorded));
    }

    private static void Add(Job job, BuildGuess guess, SortedDictionary<string, double> truth, SortedDictionary<string, double> recorded)
    {
        bool contract = job.Unit.Owner.IsContract;
        double pace = job.Unit.Pace;
        foreach (ShownAs shown in ShownAs.AllOf(guess.Family, job.Note.ComplaintKind, job.Note.CodeGroup))
        {
            FamilyCause which = guess.Family.Causes[shown.Cause];
            double rate = LifeTables.Rate(guess.Family, shown.Cause, guess.BuildMonth, guess.Age * pace)
                * which.Cause.Season.Speed(job.OpenedDay);
            double weight = guess.Weight * rate * shown.Calls;
            Put(truth, which.Cause.Component, weight);
            Put(recorded, which.Cause.Component, weight * (1 - shown.Wrong) * Kept(which, guess.Age, contract));
            foreach ((int other, double share) in shown.TakenFor)
            {
                FamilyCause taken = guess.Family.Causes[other];
                Put(recorded, taken.Cause.Component, weight * shown.Wrong * share * Kept(taken, guess.Age, contract));
            }
        }
    }

    private static double Kept(FamilyCause cause, double age, bool contract) =>
        cause.Part is null ? 1 : Wear.IsRepaired(age, cause.Part.Price, contract);

    private static void Put(SortedDictionary<string, double> sums, string component, double weight) =>
        sums[component] = sums.GetValueOrDefault(component) + weight;

    private static Odds Normal(SortedDictionary<string, double> sums)
    {
        double total = sums.Values.Sum();
        return new Odds([.. sums.Select(s => (s.Key, s.Value / total)).OrderByDescending(s => s.Item2).ThenBy(s => s.Key, StringComparer.Ordinal)]);
    }
}

/// <summary>What one complaint as typed says about one cause of a family.</summary>
/// <param name="Cause">Index of the cause.</param>
/// <param name="Calls">Calls of this kind per failure: the chance to show so, and the call that comes back after a wrong diagnosis.</param>
/// <param name="Wrong">Share of those calls whose diagnosis is wrong.</param>
/// <param name="TakenFor">What it is then taken for; the shares sum to 1, or none.</param>
internal sealed record ShownAs(int Cause, double Calls, double Wrong, IReadOnlyList<(int Cause, double Share)> TakenFor)
{
    // a wrong diagnosis comes back unless the customer goes elsewhere or the repair was declined
    private const double ComesBack = 0.80;

    private static readonly ConcurrentDictionary<(int Family, string Kind, int Code), ShownAs[]> Known = new();

    /// <summary>All causes that can lie behind a complaint.</summary>
    public static IReadOnlyList<ShownAs> AllOf(ModelFamily family, string kind, int codeGroup) =>
        Known.GetOrAdd((family.Index, kind, codeGroup), _ => [.. Build(family, kind, codeGroup)]);

    private static IEnumerable<ShownAs> Build(ModelFamily family, string kind, int codeGroup)
    {
        for (int k = 0; k < family.Causes.Count; k++)
        {
            Cause cause = family.Causes[k].Cause;
            double likelihood = ComplaintOdds.Likelihood(family, cause, kind, codeGroup);
            if (likelihood == 0)
            {
                continue;
            }

            double[] mistaken = MistakenFor(family, k, kind);
            double total = mistaken.Sum();
            double miss = total > 0 ? Technician.MeanMissChance(cause) : 0;
            double calls = 1 + (ComesBack * miss);
            (int, double)[] taken = total > 0
                ? [.. mistaken.Select((w, i) => (i, w / total)).Where(t => t.Item2 > 0)]
                : [];
            yield return new ShownAs(k, likelihood * calls, miss / calls, taken);
        }
    }

    // a vague complaint hides how the fault showed: any of the ways it can
    private static double[] MistakenFor(ModelFamily family, int cause, string kind)
    {
        if (kind is not ComplaintOdds.VagueKind and not ComplaintOdds.NoKind)
        {
            return Mistaken.Weights(family, cause, kind);
        }

        double[] sum = new double[family.Causes.Count];
        foreach ((string shown, double share) in family.Causes[cause].Cause.Odds)
        {
            double[] one = Mistaken.Weights(family, cause, ComplaintOdds.Shown(family, shown));
            for (int i = 0; i < sum.Length; i++)
            {
                sum[i] += share * one[i];
            }
        }

        return sum;
    }
}
