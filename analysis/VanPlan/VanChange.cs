namespace PartsSignal.Analysis.VanPlan;

/// <summary>One step from what is aboard to the plan.</summary>
/// <param name="Van">The van.</param>
/// <param name="Action">What to do.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Label">Number on the piece, where it is another; null: the current number, or no piece yet.</param>
/// <param name="Description">Text; null: none.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
/// <param name="OtherVan">The other van of a move; null: no move.</param>
/// <param name="By">Last day the supplier takes it back; null: no such day.</param>
/// <param name="Money">Price of the pieces.</param>
/// <param name="Supplier">Who delivers or takes it back; null: not known.</param>
public sealed record VanChange(
    string Van, ChangeAction Action, string PartNumber, string? Label, string? Description, int Quantity, string? OtherVan,
    DateOnly? By, decimal Money, string? Supplier);
