using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;

namespace PartsSignal.Reports.Monthly;

/// <summary>The plan for the vans, and how it did on months it had not seen.</summary>
/// <param name="Vans">One plan a van.</param>
/// <param name="Replay">How the replay compared the plans, in words; null: there was no replay.</param>
/// <param name="ReplayRows">What each way of stocking would have finished.</param>
/// <param name="Curves">Share finished against money, per way of stocking; empty: not computed.</param>
/// <param name="CurveBasis">What the curves count.</param>
/// <param name="Budget">Today's money per van; null: not set.</param>
public sealed record VanFacts(
    IReadOnlyList<VanPlanView> Vans, string? Replay, IReadOnlyList<ReplayRow> ReplayRows, IReadOnlyList<Curve> Curves, string CurveBasis, double? Budget);

/// <summary>The plan of one van.</summary>
/// <param name="Van">The van.</param>
/// <param name="Summary">What the plan costs and brings, in words.</param>
/// <param name="Counted">True: the van was counted, so the plan tells what to add and take off; false: it tells the whole kit.</param>
/// <param name="Lines">The lines.</param>
public sealed record VanPlanView(string Van, string Summary, bool Counted, IReadOnlyList<VanLine> Lines);

/// <summary>One part on the plan of a van.</summary>
/// <param name="Action">What to do, in words: add 2, keep 1, send back 1.</param>
/// <param name="PartNumber">Current part number.</param>
/// <param name="Description">What it is.</param>
/// <param name="OnHand">Pieces counted; null: not counted.</param>
/// <param name="Planned">Pieces planned.</param>
/// <param name="Price">Price of one; null: not known.</param>
/// <param name="PiecesPerYear">Pieces this van is expected to use a year; null: not on the plan.</param>
/// <param name="JobsPerYear">Jobs a year that could not be finished at the first visit without it; null: not on the plan.</param>
public sealed record VanLine(string Action, string PartNumber, string? Description, long? OnHand, long Planned, decimal? Price, double? PiecesPerYear, double? JobsPerYear);

/// <summary>One way of stocking, replayed.</summary>
public sealed record ReplayRow(string Way, long Jobs, Estimate Finished, decimal? Money);
