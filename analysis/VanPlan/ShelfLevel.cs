namespace PartsSignal.Analysis.VanPlan;

/// <summary>When the shop's shelf should reorder a part that the vans carry.</summary>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text; null: none.</param>
/// <param name="Supplier">Null: not known.</param>
/// <param name="Price">Price of a piece.</param>
/// <param name="LeadDays">Days from order to delivery.</param>
/// <param name="PiecesPerMonth">Expected use of all vans, gamma-Poisson with ageing.</param>
/// <param name="CriticalRatio">Wanted chance that nothing is missing until the next delivery, 0 to 1.</param>
/// <param name="ReorderPoint">Order when the shelf holds no more than this.</param>
/// <param name="ExpectedMissing">Pieces missing on average until the next delivery at that point.</param>
/// <param name="SbaPerMonth">Syntetos-Boylan forecast, for comparison; null: never used.</param>
/// <param name="TsbPerMonth">Teunter-Syntetos-Babai forecast, for comparison; near 0: a dying part; null: never used.</param>
public sealed record ShelfLevel(
    string PartNumber, string? Description, string? Supplier, decimal Price, int LeadDays, double PiecesPerMonth, double CriticalRatio,
    int ReorderPoint, double ExpectedMissing, double? SbaPerMonth, double? TsbPerMonth);
