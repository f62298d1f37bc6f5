using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>One step of the mean number of repairs.</summary>
/// <param name="Age">Age of the repairs.</param>
/// <param name="AtRisk">Appliances watched at this age.</param>
/// <param name="Repairs">Repairs at this age.</param>
/// <param name="Mean">Mean repairs per appliance up to this age.</param>
/// <param name="RobustVariance">Allows for repairs of one appliance going together; may fall with age, and that is right.</param>
/// <param name="PoissonVariance">Sum d/n^2: right only if repairs come by chance alone.</param>
/// <param name="Lower">Lower end of the 95 % interval, log scale, robust; null at variance 0.</param>
/// <param name="Upper">Upper end of the 95 % interval, log scale, robust; null at variance 0.</param>
public sealed record MeanRepairsPoint(
    double Age, long AtRisk, long Repairs, double Mean, double RobustVariance, double PoissonVariance, double? Lower, double? Upper);

/// <summary>
/// Mean cumulative number of repairs M(t) = sum d/n (Nelson 1988) with the robust variance
/// sum_i { sum_k (d_ik - d_k/n_k)/n_k }^2 over appliances at risk (Lawless and Nadeau 1995). Late entry, gaps and
/// several repairs on one day are allowed.
/// </summary>
/// <param name="Points">Steps by age; empty when nothing was repaired.</param>
/// <param name="Rejected">Histories that were left out, each with its place in the input and the reason.</param>
public sealed record MeanCumulativeFunction(IReadOnlyList<MeanRepairsPoint> Points, IReadOnlyList<BadRow> Rejected)
{
    /// <summary>Estimates the mean. Histories with a fault are left out and listed in <see cref="Rejected"/>.</summary>
    public static MeanCumulativeFunction Estimate(IReadOnlyList<RepairHistory> histories)
    {
        (IReadOnlyList<RepairHistory> good, IReadOnlyList<BadRow> bad) = BadRow.Split(histories, h => h.Fault());
        return new MeanCumulativeFunction(Steps(good), bad);
    }

    private static List<MeanRepairsPoint> Steps(IReadOnlyList<RepairHistory> histories)
    {
        TiedAges ties = TiedAges.Among(histories.SelectMany(h => h.Repairs.Concat(h.Watched.SelectMany(w => new[] { w.From, w.To }))));
        (double Age, int Unit)[] repairs = [.. histories.SelectMany((h, i) => h.Repairs.Select(r => (ties.Snap(r), i))).Order()];
        (double Age, int Unit)[] entries = [.. histories.SelectMany((h, i) => h.Watched.Select(w => (ties.Snap(w.From), i))).Order()];
        (double Age, int Unit)[] exits = [.. histories.SelectMany((h, i) => h.Watched.Select(w => (ties.Snap(w.To), i))).Order()];
        var influence = new RepairInfluence(histories.Count);
        var points = new List<MeanRepairsPoint>();
        double mean = 0;
        double poisson = 0;
        int entered = 0;
        int left = 0;
        for (int at = 0; at < repairs.Length;)
        {
            double age = repairs[at].Age;
            for (; left < exits.Length && exits[left].Age < age; left++)
            {
                // A stretch that ended before this one began was entered earlier, so it is in.
                EnterUntil(exits[left].Age);
                influence.Leave(exits[left].Unit);
            }

            EnterUntil(age);
            int first = at;
            while (at < repairs.Length && repairs[at].Age == age)
            {
                at++;
            }

            long n = entered - left;
            mean += (double)(at - first) / n;
            poisson += (at - first) / ((double)n * n);
            influence.Step(n, repairs.AsSpan(first, at - first));
            double variance = influence.Variance;
            (double Lower, double Upper)? interval = variance > 0 ? Interval95.Log(mean, Math.Sqrt(variance)) : null;
            points.Add(new MeanRepairsPoint(age, n, at - first, mean, variance, poisson, interval?.Lower, interval?.Upper));
        }

        return points;

        void EnterUntil(double age)
        {
            for (; entered < entries.Length && entries[entered].Age < age; entered++)
            {
                influence.Enter(entries[entered].Unit);
            }
        }
    }
}

/// <summary>A stretch of ages through which an appliance was watched: at risk at t iff From &lt; t &lt;= To.</summary>
public readonly record struct Watch(double From, double To);

/// <summary>One appliance with all its repairs.</summary>
/// <param name="Watched">Stretches, ascending and apart.</param>
/// <param name="Repairs">Ages at repair; several at one age are allowed.</param>
public sealed record RepairHistory(IReadOnlyList<Watch> Watched, IReadOnlyList<double> Repairs)
{
    /// <summary>Why this history cannot be used, or null if it can.</summary>
    public string? Fault()
    {
        if (!Watched.All(w => double.IsFinite(w.From) && double.IsFinite(w.To)) || !Repairs.All(double.IsFinite))
        {
            return "an age is missing";
        }

        for (int i = 0; i < Watched.Count; i++)
        {
            if (!(Watched[i].From < Watched[i].To) || (i > 0 && Watched[i].From < Watched[i - 1].To))
            {
                return "a stretch ends no later than it begins, or overlaps the one before";
            }
        }

        return Repairs.Any(r => !Watched.Any(w => w.From < r && r <= w.To)) ? "a repair lies outside the watched ages" : null;
    }
}
