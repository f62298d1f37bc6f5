using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>What happened at one age.</summary>
/// <param name="Age">The age.</param>
/// <param name="Entries">Appliances whose watching began at this age.</param>
/// <param name="Exits">Appliances whose watching ended at this age, failed ones included.</param>
/// <param name="Failures">Those of them that failed.</param>
public readonly record struct AgeLedgerRow(double Age, long Entries, long Exits, long Failures);

/// <summary>
/// Entries, exits and failures by age: all that a survival curve, a cumulative hazard or a Weibull fit need to know
/// of any number of appliances.
/// </summary>
public sealed record AgeLedger
{
    private AgeLedger(IReadOnlyList<AgeLedgerRow> rows, IReadOnlyList<BadRow> rejected) => (Rows, Rejected) = (rows, rejected);

    /// <summary>Ages ascending, each once.</summary>
    public IReadOnlyList<AgeLedgerRow> Rows { get; }

    /// <summary>Spans that were left out.</summary>
    public IReadOnlyList<BadRow> Rejected { get; }

    /// <summary>All failures.</summary>
    public long Failures => Rows.Sum(r => r.Failures);

    /// <summary>All appliances.</summary>
    public long Units => Rows.Sum(r => r.Exits);

    /// <summary>Counts spans; any cause counts as a failure.</summary>
    public static AgeLedger From(IReadOnlyList<AgeSpan> spans)
    {
        CheckedSpans split = CheckedSpans.From(spans);
        double[] entries = [.. split.Good.Select(g => g.Entry).Order()];
        (double Age, bool Failed)[] exits = [.. split.Good.Select(g => (g.Exit, g.Failed)).Order()];
        var rows = new List<AgeLedgerRow>();
        for (int entered = 0, left = 0; left < exits.Length;)
        {
            double age = entered < entries.Length ? Math.Min(entries[entered], exits[left].Age) : exits[left].Age;
            int came = entered;
            int went = left;
            long failures = 0;
            for (; entered < entries.Length && entries[entered] == age; entered++)
            {
            }

            for (; left < exits.Length && exits[left].Age == age; left++)
            {
                failures += exits[left].Failed ? 1 : 0;
            }

            rows.Add(new AgeLedgerRow(age, entered - came, left - went, failures));
        }

        return new AgeLedger(rows, split.Bad);
    }

    /// <summary>Takes counts made elsewhere, by age ascending.</summary>
    /// <exception cref="ArgumentException">Ages repeat or descend, a count is negative, or more leave than came.</exception>
    public static AgeLedger FromCounts(IReadOnlyList<AgeLedgerRow> rows)
    {
        long present = 0;
        for (int i = 0; i < rows.Count; i++)
        {
            AgeLedgerRow row = rows[i];
            present -= row.Exits;
            string? fault = !(row.Age >= 0) ? "the age is missing or below 0"
                : i > 0 && row.Age <= rows[i - 1].Age ? "the age is not above the one before"
                : row.Entries < 0 || row.Failures < 0 ? "a count is below 0"
                : row.Failures > row.Exits ? "more failed than left"
                : present < 0 ? "more leave than came"
                : null;
            if (fault is not null)
            {
                throw new ArgumentException($"Row {i}: {fault}.", nameof(rows));
            }

            present += row.Entries;
        }

        return new AgeLedger(rows, []);
    }

    /// <summary>What is left of these counts without some of them.</summary>
    /// <exception cref="ArgumentException">The others are no part of these counts.</exception>
    public AgeLedger Without(AgeLedger part)
    {
        Dictionary<double, AgeLedgerRow> taken = part.Rows.ToDictionary(r => r.Age);
        return FromCounts([.. Rows
            .Select(r => taken.GetValueOrDefault(r.Age) is var t ? new AgeLedgerRow(r.Age, r.Entries - t.Entries, r.Exits - t.Exits, r.Failures - t.Failures) : r)
            .Where(r => r.Entries != 0 || r.Exits != 0 || r.Failures != 0)]);
    }

    /// <summary>The risk set at each age with a failure after <paramref name="after"/>.</summary>
    /// <param name="after">Age from which on the curve is conditional, or null for all ages.</param>
    internal IEnumerable<RiskSet> RiskSets(double? after = null)
    {
        long present = 0;
        foreach (AgeLedgerRow row in Rows)
        {
            if (row.Failures > 0 && (after is null || row.Age > after))
            {
                yield return new RiskSet(row.Age, present, row.Failures);
            }

            present += row.Entries - row.Exits;
        }
    }
}

/// <summary>Those at risk at an age with failures.</summary>
/// <param name="Age">The age.</param>
/// <param name="AtRisk">Appliances with entry &lt; age &lt;= exit.</param>
/// <param name="Failures">Those that failed at this age; ties are one step.</param>
internal readonly record struct RiskSet(double Age, long AtRisk, long Failures);
