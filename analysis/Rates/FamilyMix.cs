using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// How much of a family's calls one component takes, against all calls of the type. Needs no count of units out there,
/// and cannot tell a bad component from good others: read share and over-representation together.
/// </summary>
public sealed record FamilyMix
{
    /// <summary>Appliance type whose families are compared.</summary>
    public required string ApplianceType { get; init; }

    /// <summary>The family.</summary>
    public required string ModelFamily { get; init; }

    /// <summary>The component; none: no part was needed.</summary>
    public required string Component { get; init; }

    /// <summary>Calls of the family whose need is known.</summary>
    public required long Calls { get; init; }

    /// <summary>Those that needed the component.</summary>
    public required long Observed { get; init; }

    /// <summary>Family total times component total over the type's total.</summary>
    public required double Expected { get; init; }

    /// <summary>Observed / calls, or null if there are no calls.</summary>
    public double? Share { get; init; }

    /// <summary>Lower end of Wilson's interval.</summary>
    public double? ShareLower { get; init; }

    /// <summary>Upper end.</summary>
    public double? ShareUpper { get; init; }

    /// <summary>log2((O + 1/2) / (E + 1/2)): 0 as expected, 1 twice as often.</summary>
    public required double InformationComponent { get; init; }

    /// <summary>Lower end; above 0: over-represented.</summary>
    public required double InformationComponentLower { get; init; }

    /// <summary>Upper end; below 0: under-represented.</summary>
    public required double InformationComponentUpper { get; init; }

    /// <summary>Share in this family over share in all others; null where a count it needs is 0.</summary>
    public double? ShareRatio { get; init; }

    /// <summary>Lower end of its interval.</summary>
    public double? ShareRatioLower { get; init; }

    /// <summary>Upper end of its interval.</summary>
    public double? ShareRatioUpper { get; init; }

    /// <summary>All families and components.</summary>
    public static IReadOnlyList<FamilyMix> Table(RateCounts counts, RateOptions options)
    {
        Dictionary<string, GroupSize> types = counts.Groups
            .Where(g => g.Group is { Basis: RateBasis.ShareOfCalls, Grouping: "type" })
            .ToDictionary(g => g.Group.ApplianceType);
        return [.. counts.Groups
            .Where(g => g.Group is { Basis: RateBasis.ShareOfCalls, Grouping: "family", HasSiblings: true } && g.KnownCalls > 0)
            .SelectMany(g => counts.Subjects(g.Group).Where(s => s.Kind == RateSubject.Component)
                .Select(s => Row(counts, types[g.Group.ApplianceType], g, s, options)))];
    }

    private static FamilyMix Row(RateCounts counts, GroupSize type, GroupSize family, RateSubject component, RateOptions options)
    {
        long pair = counts.Events(family.Group, component), column = counts.Events(type.Group, component);
        double expected = (double)family.KnownCalls * column / type.KnownCalls;
        Estimate share = Proportion.Wilson(pair, family.KnownCalls, options.Confidence);
        Estimate ic = Statistics.Intervals.InformationComponent.From(pair, expected, options.Confidence);
        Estimate ratio = ReportingRatio.Proportional(pair, family.KnownCalls, column, type.KnownCalls, options.Confidence);
        return new FamilyMix
        {
            ApplianceType = family.Group.ApplianceType,
            ModelFamily = family.Group.ModelFamily!,
            Component = component.Name,
            Calls = family.KnownCalls,
            Observed = pair,
            Expected = expected,
            Share = share.Value,
            ShareLower = share.Lower,
            ShareUpper = share.Upper,
            InformationComponent = ic.Value!.Value,
            InformationComponentLower = ic.Lower!.Value,
            InformationComponentUpper = ic.Upper!.Value,
            ShareRatio = ratio.Value,
            ShareRatioLower = ratio.Lower,
            ShareRatioUpper = ratio.Upper,
        };
    }
}
