using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The report of one month, ready to be drawn.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Currency">Mark of its money; may be empty.</param>
/// <param name="Month">First day of the month.</param>
/// <param name="AsOf">Last day the data speaks for.</param>
/// <param name="Sentences">The month in five sentences.</param>
/// <param name="Sections">The sections, in reading order; the first is the month in sentences.</param>
public sealed record MonthlyReport(
    string Shop, string Currency, DateOnly Month, DateOnly AsOf, IReadOnlyList<string> Sentences, IReadOnlyList<Section> Sections)
{
    /// <summary>All tables, for the workbook.</summary>
    public IReadOnlyList<TableView> Tables => [.. Sections.SelectMany(s => s.Tables)];
}
