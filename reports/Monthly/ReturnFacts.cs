using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Monthly;

/// <summary>Which repairs came back.</summary>
/// <param name="Days">Days within which a return counts.</param>
/// <param name="Months">Share that came back by month of closing, oldest first.</param>
/// <param name="Components">Share that came back by component fitted, most returns first.</param>
/// <param name="Jobs">Jobs of the month that were returns.</param>
/// <param name="Cost">What the returns of the last twelve months cost at the shop's price of a second visit; null: not known.</param>
/// <param name="Note">What the shares leave out, in words.</param>
public sealed record ReturnFacts(
    int Days, IReadOnlyList<ReturnMonth> Months, IReadOnlyList<ReturnRow> Components, IReadOnlyList<ReturnJob> Jobs, decimal? Cost, string Note);

/// <summary>Repairs closed in one month, and how many came back.</summary>
/// <param name="Month">First day of the month.</param>
/// <param name="Repairs">Repairs watched for the whole window.</param>
/// <param name="CameBack">Of them came back.</param>
/// <param name="Share">Their share.</param>
/// <param name="StillWatched">Repairs whose window has not passed yet.</param>
public sealed record ReturnMonth(DateOnly Month, long Repairs, long CameBack, Estimate Share, long StillWatched = 0);

/// <summary>Repairs of one component, and how many came back.</summary>
public sealed record ReturnRow(string Name, long Repairs, long CameBack, Estimate Share, bool StandsOut = false);

/// <summary>A job that followed another on the same unit for the same complaint.</summary>
public sealed record ReturnJob(string JobId, DateOnly OpenedOn, string EarlierJobId, int DaysBetween, string? Complaint, string? EarlierNeed, string? Need);
