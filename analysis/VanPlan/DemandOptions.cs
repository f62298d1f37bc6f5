namespace PartsSignal.Analysis.VanPlan;

/// <summary>How past jobs become the demand a plan is made for.</summary>
internal sealed record DemandOptions
{
    /// <summary>Days of history looked at, 1 or more. Default 730.</summary>
    public int HistoryDays { get; init; } = 730;

    /// <summary>A job this many days old counts half where jobs are few, above 0. Default 365.</summary>
    public double HalfLifeDays { get; init; } = 365;

    /// <summary>
    /// The same where jobs are plenty: demand drifts as machines age, and a busy shop can afford to forget sooner. Above
    /// 0, at most <see cref="HalfLifeDays"/>. Default 183.
    /// </summary>
    public double BusyHalfLifeDays { get; init; } = 183;

    /// <summary>Aged jobs that are plenty: the half-life is the shortest that leaves so many. Default 2,500.</summary>
    public double PlentyJobs { get; init; } = 2500;

    /// <summary>Share of the demand taken from single-part use where the data is thin, 0 to 1. Default 0.4.</summary>
    public double SinglesShare { get; init; } = 0.4;

    /// <summary>Up to so many (aged) jobs the data is thin; beyond, the share falls in proportion. Default 200.</summary>
    public double ThinJobs { get; init; } = 200;

    /// <summary>
    /// Up to so many (aged) jobs each part's use is pulled towards what its component's use on all families leads to
    /// expect; beyond, less so in proportion. 0: never. Default 1,000.
    /// </summary>
    public double FewJobs { get; init; } = 1000;

    /// <summary>Days the plan is for; decides the season. Default 91.</summary>
    public int HorizonDays { get; init; } = 91;

    /// <summary>Full years of history needed before a season is believed. Default 2.</summary>
    public int SeasonYears { get; init; } = 2;
}
