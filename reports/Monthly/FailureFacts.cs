using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Charts;

namespace PartsSignal.Reports.Monthly;

/// <summary>Which components and families fail, in shares of calls and, where a register gives unit-years, as rates.</summary>
/// <param name="Components">Components by calls in the period, most first.</param>
/// <param name="Families">Families by calls in the period, most first.</param>
/// <param name="Rates">Rates by age band of the components with most failures; empty: no register.</param>
/// <param name="Period">The period the shares cover, in words.</param>
public sealed record FailureFacts(
    IReadOnlyList<ShareRow> Components, IReadOnlyList<FamilyRow> Families, IReadOnlyList<BandSeries> Rates, string Period);

/// <summary>One component's share of the calls.</summary>
/// <param name="Name">The component.</param>
/// <param name="Calls">Calls it was at fault in.</param>
/// <param name="Of">Calls whose cause is known.</param>
/// <param name="Share">Its share.</param>
/// <param name="Before">Its share in the month before; null: not known.</param>
/// <param name="YearAgo">Its share in the same month a year earlier; null: not known.</param>
public sealed record ShareRow(string Name, long Calls, long Of, Estimate Share, double? Before, double? YearAgo);

/// <summary>One family.</summary>
/// <param name="Family">The family.</param>
/// <param name="ApplianceType">Its type.</param>
/// <param name="Brand">Its brand.</param>
/// <param name="Calls">Its calls in the period.</param>
/// <param name="Share">Its share of all calls.</param>
/// <param name="TopComponent">The component most often at fault; null: not known.</param>
/// <param name="StandsOut">Components it needs more often than its ages explain, in words; empty: none.</param>
public sealed record FamilyRow(string Family, string? ApplianceType, string? Brand, long Calls, Estimate Share, string? TopComponent, string StandsOut);

/// <summary>Rates of one component by age band.</summary>
/// <param name="Name">What fails.</param>
/// <param name="Basis">Whose unit-years, and how many.</param>
/// <param name="Bands">The bands, youngest first.</param>
public sealed record BandSeries(string Name, string Basis, IReadOnlyList<BandRate> Bands);
