namespace PartsSignal.Analysis.AgeCurves;

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
