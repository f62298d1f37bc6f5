namespace PartsSignal.Reports.Monthly;

/// <summary>Which report, and what the shop's settings say that its pages show.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Currency">Mark of its money; may be empty.</param>
/// <param name="Month">First day of the month.</param>
/// <param name="AsOf">Last day the data speaks for.</param>
/// <param name="CallbackDays">Days within which a return counts as a callback.</param>
/// <param name="SecondVisitCost">What one avoidable second visit costs.</param>
/// <param name="ModelCard">The model card, point by point; empty: none.</param>
public sealed record MonthlyOptions(
    string Shop, string Currency, DateOnly Month, DateOnly AsOf, int CallbackDays, decimal SecondVisitCost, IReadOnlyList<(string Point, string Text)> ModelCard);
