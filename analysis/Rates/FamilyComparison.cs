using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// One family's events against what its age mix leads to expect: each age band at the rate all families of the type have
/// in it. An older fleet is no worse product.
/// </summary>
public sealed record FamilyComparison
{
    /// <summary>share_of_calls, register_unit_years or seen_unit_years.</summary>
    public required string Basis { get; init; }

    /// <summary>Appliance type whose families are compared.</summary>
    public required string ApplianceType { get; init; }

    /// <summary>The family.</summary>
    public required string ModelFamily { get; init; }

    /// <summary>component or complaint_kind.</summary>
    public required string SubjectKind { get; init; }

    /// <summary>The component or complaint kind.</summary>
    public required string Subject { get; init; }

    /// <summary>Calls with it.</summary>
    public required long Observed { get; init; }

    /// <summary>Calls expected after standardising for age.</summary>
    public required double Expected { get; init; }

    /// <summary>Observed / expected, or null if nothing is expected.</summary>
    public double? Ratio { get; init; }

    /// <summary>Lower end of Garwood's 95 % interval of the ratio.</summary>
    public double? Lower { get; init; }

    /// <summary>Upper end.</summary>
    public double? Upper { get; init; }

    /// <summary>Chance of so many or more by luck (mid-p), or null if not tested.</summary>
    public double? P { get; init; }

    /// <summary>The same after Benjamini and Hochberg over all cells of the basis that were tested.</summary>
    public double? Q { get; init; }

    /// <summary>Share of false discoveries within 10 %, ratio 1.5 or more, three events or more.</summary>
    public required bool StandsOut { get; init; }

    /// <summary>Fewest expected events of a cell that is tested although it saw fewer than three.</summary>
    private const double FewestExpected = 0.3;

    /// <summary>All families and subjects, in the order of the groups.</summary>
    public static IReadOnlyList<FamilyComparison> Table(RateCounts counts, RateOptions options, EffectGate gate)
    {
        Dictionary<(string, string, string), GroupSize> bands = counts.Groups
            .Where(g => g.Group.Grouping == "age")
            .ToDictionary(g => (g.Group.Basis, g.Group.ApplianceType, g.Group.AgeBand!));
        ILookup<(string, string, string?), GroupSize> split = counts.Groups
            .Where(g => g.Group.Grouping == "family_age")
            .ToLookup(g => (g.Group.Basis, g.Group.ApplianceType, g.Group.ModelFamily));
        var rows = new List<FamilyComparison>();
        foreach (IGrouping<string, GroupSize> basis in counts.Groups
            .Where(g => g.Group.Grouping == "family" && g.Group.HasSiblings).GroupBy(g => g.Group.Basis))
        {
            rows.AddRange(Judge([.. basis.SelectMany(g => counts.Subjects(g.Group).Select(s =>
                Compare(counts, g, s, split[(g.Group.Basis, g.Group.ApplianceType, g.Group.ModelFamily)], bands, options)))], gate));
        }

        return rows;
    }

    private static FamilyComparison Compare(
        RateCounts counts, GroupSize family, RateSubject subject, IEnumerable<GroupSize> split, Dictionary<(string, string, string), GroupSize> bands, RateOptions options)
    {
        double expected = 0;
        foreach (GroupSize part in split)
        {
            GroupSize everybody = bands[(part.Group.Basis, part.Group.ApplianceType, part.Group.AgeBand!)];
            double exposure = RawRate.Exposure(everybody, subject);
            expected += exposure > 0 ? counts.Events(everybody.Group, subject) / exposure * RawRate.Exposure(part, subject) : 0;
        }

        long observed = counts.Events(family.Group, subject);
        StandardizedRatio ratio = StandardizedRatio.From(observed, expected, options.Confidence);
        return new FamilyComparison
        {
            Basis = family.Group.Basis,
            ApplianceType = family.Group.ApplianceType,
            ModelFamily = family.Group.ModelFamily!,
            SubjectKind = subject.Kind,
            Subject = subject.Name,
            Observed = observed,
            Expected = expected,
            Ratio = ratio.Ratio.Value,
            Lower = ratio.Ratio.Lower,
            Upper = ratio.Ratio.Upper,
            P = expected >= FewestExpected || observed >= 3 ? ratio.UpperMidP : null,
            StandsOut = false,
        };
    }

    private static FamilyComparison[] Judge(FamilyComparison[] rows, EffectGate gate)
    {
        int[] tested = [.. Enumerable.Range(0, rows.Length).Where(i => rows[i].P is not null)];
        IReadOnlyList<double> q = PValues.BenjaminiHochberg([.. tested.Select(i => rows[i].P!.Value)]);
        for (int k = 0; k < tested.Length; k++)
        {
            FamilyComparison row = rows[tested[k]];
            rows[tested[k]] = row with { Q = q[k], StandsOut = gate.Passes(q[k], row.Ratio, row.Observed) };
        }

        return rows;
    }
}
