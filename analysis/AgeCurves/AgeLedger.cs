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
    private AgeLedger(IReadOnlyList<AgeLedgerRow> rows, IReadOnlyList<BadSpan> rejected) => (Rows, Rejected) = (rows, rejected);

    /// <summary>Ages ascending, each once.</summary>
    public IReadOnlyList<AgeLedgerRow> Rows { get; }

    /// <summary>Spans that were left out.</summary>
    public IReadOnlyList<BadSpan> Rejected { get; }

    /// <summary>All failures.</summary>
    public long Failures => Rows.Sum(r => r.Failures);

    /// <summary>All appliances.</summary>
    public long Units => Rows.Sum(r => r.Exits);

    /// <summary>Counts spans; any cause counts as a failure.</summary>
    public static AgeLedger Of(IReadOnlyList<AgeSpan> spans)
    {
        CheckedSpans split = CheckedSpans.Of(spans);
        var counts = new SortedDictionary<double, (long Entries, long Exits, long Failures)>();
        foreach (AgeSpan span in split.Good)
        {
            counts[span.Entry] = counts.GetValueOrDefault(span.Entry) is var e ? (e.Entries + 1, e.Exits, e.Failures) : default;
            counts[span.Exit] = counts.GetValueOrDefault(span.Exit) is var x ? (x.Entries, x.Exits + 1, x.Failures + (span.Failed ? 1 : 0)) : default;
        }

        return new AgeLedger([.. counts.Select(c => new AgeLedgerRow(c.Key, c.Value.Entries, c.Value.Exits, c.Value.Failures))], split.Bad);
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
            if (row.Age < 0 || (i > 0 && row.Age <= rows[i - 1].Age) || row.Entries < 0 || row.Failures < 0 || row.Failures > row.Exits || present < 0)
            {
                throw new ArgumentException($"Row {i} (age {row.Age}) is not part of a ledger.", nameof(rows));
            }

            present += row.Entries;
        }

        return new AgeLedger(rows, []);
    }

    /// <summary>The risk set at each age with a failure after <paramref name="after"/>.</summary>
    /// <param name="after">Age from which on the curve is conditional; null: all ages.</param>
    public IEnumerable<RiskSet> RiskSets(double? after = null)
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
public readonly record struct RiskSet(double Age, long AtRisk, long Failures);
