using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Analysis.Rates;

/// <summary>How often one component was needed, or one complaint made, in one month of calls.</summary>
public sealed record MonthlyRate
{
    /// <summary>First day of the month of the call.</summary>
    public required DateOnly Month { get; init; }

    /// <summary>share_of_calls, register_unit_years or seen_unit_years.</summary>
    public required string Basis { get; init; }

    /// <summary>Appliance type.</summary>
    public required string ApplianceType { get; init; }

    /// <summary>Model family, or null for all of the type.</summary>
    public string? ModelFamily { get; init; }

    /// <summary>component or complaint_kind.</summary>
    public required string SubjectKind { get; init; }

    /// <summary>The component or complaint kind.</summary>
    public required string Subject { get; init; }

    /// <summary>Calls with it.</summary>
    public required long Events { get; init; }

    /// <summary>Calls, or unit-years, of the group in that month.</summary>
    public required double Exposure { get; init; }

    /// <summary>calls or unit-years.</summary>
    public required string ExposureUnit { get; init; }

    /// <summary>Calls of the group and month whose need is not known yet or will never be.</summary>
    public required long NotKnown { get; init; }

    /// <summary>share (0 to 1) or per 100 unit-years.</summary>
    public required string Unit { get; init; }

    /// <summary>The figure, or null if missing (see <see cref="Missing"/>).</summary>
    public double? Estimate { get; init; }

    /// <summary>Lower end: Wilson for shares, Garwood for rates; over unit-years that of no untold case.</summary>
    public double? Lower { get; init; }

    /// <summary>Upper end; over unit-years that of all untold cases (<see cref="UntoldSpread"/>).</summary>
    public double? Upper { get; init; }

    /// <summary>Why there is no figure; null when there is one.</summary>
    public string? Missing { get; init; }

    /// <summary>Over unit-years: cases that may belong to the group although the job does not tell the machine; they are not among <see cref="Events"/>.</summary>
    public long? Untold { get; init; }

    /// <summary>Over unit-years: how many of <see cref="Untold"/> are expected to belong to it.</summary>
    public double? UntoldExpected { get; init; }

    /// <summary>Months with at least one event, oldest first. A subject that is not listed did not happen that month.</summary>
    public static IReadOnlyList<MonthlyRate> Table(RateCounts counts, RateOptions options)
    {
        Dictionary<RateGroup, GroupSize> sizes = counts.Groups.ToDictionary(g => g.Group);
        return [.. counts.Counts.Where(c => c.Group.Month is not null)
            .Select(c => Row(sizes[c.Group], c, counts.Untold(c.Group, c.Subject), options))
            .OrderBy(r => r.Month)];
    }

    private static MonthlyRate Row(GroupSize size, SubjectCount count, UntoldEvents untold, RateOptions options)
    {
        bool share = size.Group.Basis == RateBasis.ShareOfCalls;
        Estimate raw = RawRate.From(size, count.Subject, count.Events, untold, options);
        return new MonthlyRate
        {
            Month = size.Group.Month!.Value,
            Basis = size.Group.Basis,
            ApplianceType = size.Group.ApplianceType,
            ModelFamily = size.Group.ModelFamily,
            SubjectKind = count.Subject.Kind,
            Subject = count.Subject.Name,
            Events = count.Events,
            Exposure = RawRate.Exposure(size, count.Subject),
            ExposureUnit = share ? "calls" : "unit-years",
            NotKnown = size.Calls - size.KnownCalls,
            Untold = share ? null : untold.MayBe,
            UntoldExpected = share ? null : untold.Expected,
            Unit = share ? RawRate.Share : RawRate.PerHundredYears,
            Estimate = raw.Value,
            Lower = raw.Lower,
            Upper = raw.Upper,
            Missing = raw.Missing,
        };
    }
}
