using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads components and families of the month, and rates by age on the register.</summary>
internal static class FailureReader
{
    public static FailureFacts? Read(Database database, MonthlyOptions query)
    {
        if (!database.Has("month_needs"))
        {
            return null;
        }

        IReadOnlyList<ShareRow> components = database.Read("queries/report/month_needs.sql", r => new ShareRow(
            r.GetString(0), r.GetInt64(1), r.GetInt64(2), r.Estimate(3), r.Double(6), r.Double(7)), ("month", query.Month));
        ILookup<string, string> apart = StandOut(database);
        IReadOnlyList<FamilyRow> families = database.Read("queries/report/month_families.sql", r => new FamilyRow(
            r.GetString(0), r.Text(1), r.Text(2), r.GetInt64(3), r.Estimate(4), r.Text(7), string.Join("; ", apart[r.GetString(0)].Distinct())), ("month", query.Month));
        return new FailureFacts(components, families, Bands(database), $"Calls of {Format.Month(query.Month)}");
    }

    private static ILookup<string, string> StandOut(Database database) => database.Has("family_comparison")
        ? database.Read("queries/report/family_stands_out.sql", r => (Family: r.GetString(0),
            Text: string.Create(CultureInfo.InvariantCulture, $"{Format.Words(r.GetString(1))} {r.Double(2):0.0} times"))).ToLookup(r => r.Family, r => r.Text)
        : Array.Empty<(string Family, string Text)>().ToLookup(r => r.Family, r => r.Text);

    private static IReadOnlyList<BandSeries> Bands(Database database) => !database.Has("failure_rates") ? [] :
        [.. database.Read("queries/report/band_rates.sql", r => (
            Name: $"{Format.Words(r.GetString(0))} {Format.Words(r.GetString(1))}",
            Band: new BandRate(r.GetString(2), r.Estimate(4, r.Text(7)), r.GetInt64(3)),
            Basis: $"Register: {Format.Count(r.GetInt64(8))} failures in {Format.Number(r.Double(9)!.Value)} unit-years, all months up to the day of the data."))
            .GroupBy(r => (r.Name, r.Basis))
            .Select(g => new BandSeries(g.Key.Name, g.Key.Basis, [.. g.Select(r => r.Band)]))];
}
