using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A job as the log has it.</summary>
/// <param name="JobId">Its number.</param>
/// <param name="Van">Van that served it, or null if unknown.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="ClosedOn">Day it was settled, or null if still open.</param>
/// <param name="ApplianceType">Null: unknown.</param>
/// <param name="Family">Model family, or null if unknown.</param>
/// <param name="Outcome">How it ended, as the store spells it.</param>
/// <param name="Lines">Its part lines.</param>
public sealed record ShopJob(
    string JobId, string? Van, DateOnly OpenedOn, DateOnly? ClosedOn, string? ApplianceType, string? Family, string Outcome,
    IReadOnlyList<ShopPartLine> Lines);

/// <summary>A part fitted on a job.</summary>
/// <param name="PartNumber">Current number, or null if not resolved.</param>
/// <param name="FittedNumber">Catalog number on the part itself, or null if not resolved.</param>
/// <param name="Quantity">Pieces.</param>
public sealed record ShopPartLine(string? PartNumber, string? FittedNumber, int Quantity);

/// <summary>When a part was last fitted, on any visit of any van.</summary>
/// <param name="PartNumber">Current number.</param>
/// <param name="LastUsedOn">Day of the visit.</param>
public sealed record ShopLastUse(string PartNumber, DateOnly LastUsedOn);

/// <summary>A catalog number.</summary>
/// <param name="Number">The number.</param>
/// <param name="CurrentNumber">What replaces it today; itself when nothing does.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Component">What it is, or null if not known.</param>
/// <param name="Price">List price, or null if not known.</param>
/// <param name="SizeClass">small, medium, large, bulky, or null if not known.</param>
/// <param name="Space">Space units.</param>
/// <param name="ReturnableDays">Days the supplier takes it back, or null if not known.</param>
/// <param name="Supplier">Who lists it, or null if not known.</param>
public sealed record ShopPart(
    [Column("part_number")] string Number, string CurrentNumber, string? Description, string? Component, decimal? Price, string? SizeClass, [Column("space_units")] double Space,
    int? ReturnableDays, string? Supplier);

/// <summary>An order line.</summary>
/// <param name="Supplier">Supplier.</param>
/// <param name="OrderedOn">Day ordered.</param>
/// <param name="ReceivedOn">Day received, or null if not received yet.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Kept">Pieces less those sent back.</param>
/// <param name="UnitCost">Price of a piece, or null if not recorded.</param>
/// <param name="JobId">Job it was ordered for, or null if for stock.</param>
public sealed record ShopOrder(
    string Supplier, DateOnly OrderedOn, DateOnly? ReceivedOn, string PartNumber, int Kept, decimal? UnitCost, string? JobId);

/// <summary>Pieces counted on a van under one label.</summary>
/// <param name="Van">Van.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="FittedNumber">Number on the label.</param>
/// <param name="OnHand">Pieces.</param>
/// <param name="CountedOn">Day of the count, or null if not noted.</param>
public sealed record ShopCount(string Van, string PartNumber, string FittedNumber, int OnHand, DateOnly? CountedOn);

/// <summary>Pieces on the shop's shelf.</summary>
/// <param name="PartNumber">Current number.</param>
/// <param name="OnHand">Pieces, 0 or more.</param>
/// <param name="CountedOn">Day of the count, or null if not noted.</param>
public sealed record ShelfPart(string PartNumber, int OnHand, DateOnly? CountedOn = null);

/// <summary>A supplier's own number for a part.</summary>
public sealed record ShopAlias(string Supplier, string PartNumber, string Alias);

/// <summary>A part listed for a model family.</summary>
public sealed record ShopFit([Column("model_family")] string Family, string PartNumber);

/// <summary>A number that is no longer made.</summary>
/// <param name="Number">The number.</param>
/// <param name="EffectiveOn">Since when, or null if since ever.</param>
internal sealed record EndedPart([Column("old_number")] string Number, DateOnly? EffectiveOn);
