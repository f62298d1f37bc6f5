using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.BadBatches;
using PartsSignal.Analysis.Callbacks;
using PartsSignal.Analysis.Months;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics.Shrinkage;
using PartsSignal.Analysis.Suppliers;
using PartsSignal.Analysis.Trends;

namespace PartsSignal.Analysis.Tests.Fixtures;

/// <summary>Every result table of the statistics over a shop, by name.</summary>
internal static class PublishedTables
{
    private static readonly IReadOnlyList<SqlModel> Steps =
        [.. ResultModels.Months, .. ResultModels.Rates, .. ResultModels.Callbacks, .. ResultModels.Suppliers, .. ResultModels.Curves, .. ResultModels.Trends, .. ResultModels.BadBatches];

    /// <summary>Builds and checks all counts, then estimates.</summary>
    public static SortedDictionary<string, object[]> Of(SmallShop shop, DateOnly asOf)
    {
        using Database database = shop.Build(Steps, asOf);
        var options = new RateOptions();
        RateCounts counts = RateCounts.Read(database);
        var curves = AgeCurveTables.Create(database);
        var trends = TrendTables.Create(database);
        var batches = BadBatchTables.Create(database);
        return new SortedDictionary<string, object[]>(StringComparer.Ordinal)
        {
            ["month_figures"] = [.. MonthFigure.Table(database)],
            ["month_needs"] = [.. MonthNeed.Table(database)],
            ["month_families"] = [.. MonthFamily.Table(database)],
            ["failure_rates"] = [.. FailureRateTable.Create(counts, options)],
            ["failure_rates by supplier"] = [.. PartServiceRates.Table(database, options)],
            ["failure_rates_by_month"] = [.. MonthlyRate.Table(counts, options)],
            ["family_comparison"] = [.. FamilyComparison.Table(counts, options, new EffectGate())],
            ["family_mix"] = [.. FamilyMix.Table(counts, options)],
            ["unit_population"] = [.. UnitPopulation.Table(database)],
            ["callbacks"] = [.. database.Query("from callbacks", r => (object)string.Join('|', Enumerable.Range(0, r.FieldCount).Select(r.GetValue)))],
            ["callback_shares"] = [.. CallbackShare.Table(database)],
            ["repeat_failures"] = [.. RepeatFailure.Table(database)],
            ["supplier_quality"] = [.. SupplierQualityTable.Create(SupplierCount.Read(database), new EffectGate())],
            ["lead_times"] = [.. LeadTime.Table(database)],
            ["age_curve_summary"] = [.. curves.Summaries],
            ["age_curve_points"] = [.. curves.Points],
            ["component_incidence"] = [.. ComponentIncidence.Table(database)],
            ["repairs_per_unit"] = [.. RepairsPerUnit.Table(database)],
            ["replaced_part_curve"] = [.. ReplacedPartPoint.Table(database)],
            ["next_year_risk"] = [.. NextYearRiskTable.Create(database)],
            ["trend_alarms"] = [.. trends.Alarms],
            ["trend_alarm_jobs"] = [.. trends.AlarmJobs],
            ["trend_scans"] = [.. trends.Scans],
            ["trend_tests"] = [.. trends.Tests],
            ["trend_months"] = [.. trends.Months],
            ["bad_batches"] = [.. batches.Batches],
            ["bad_batch_jobs"] = [.. batches.Jobs],
            ["bad_batch_tests"] = [.. batches.Tests],
            ["reporting_delay"] = [.. trends.Delays],
        };
    }
}
