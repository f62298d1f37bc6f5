using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;
using PartsSignal.Analysis.Statistics.Shrinkage;

namespace PartsSignal.Analysis.Rates;

/// <summary>
/// How often fitted parts are replaced again, by component and supplier, per 100 years that such parts were in service on
/// known units. All appliance types together: one part serves several.
/// </summary>
public static class PartServiceRates
{
    private const string BySupplier = "supplier";
    private const string AnySupplier = "any_supplier";
    private const string AllTypes = "all";

    private sealed record Service(string Component, string Supplier, [Column("part_days")] long Days, [Column("replaced_again")] long Again);

    /// <summary>Every component over all suppliers, then by supplier, from a session in which the rate tables were built.</summary>
    public static IReadOnlyList<FailureRate> Table(Database database, RateOptions options) => [.. database
        .ReadTable<Service>("part_service")
        .GroupBy(s => s.Component, StringComparer.Ordinal)
        .SelectMany(g => OfComponent([.. g], options))];

    private static IEnumerable<FailureRate> OfComponent(Service[] services, RateOptions options)
    {
        var all = new Service(services[0].Component, RateGroup.Unknown, services.Sum(s => s.Days), services.Sum(s => s.Again));
        yield return Row(all, AnySupplier, null, options);
        Service[] named = [.. services.Where(s => s.Supplier != RateGroup.Unknown)];
        IReadOnlyList<Estimate> shrunk = named.Length < 2 ? [] : GammaPoissonShrinkage.Shrink(
            [.. named.Select(s => new CountGroup(s.Again, Years(s) / 100))], options.Confidence);
        foreach (Service service in services)
        {
            int place = Array.IndexOf(named, service);
            yield return Row(service, BySupplier, place >= 0 && place < shrunk.Count ? shrunk[place] : null, options);
        }
    }

    private static FailureRate Row(Service service, string grouping, Estimate? shrunk, RateOptions options)
    {
        double years = Years(service);
        Estimate raw = years < options.FewestUnitYears
            ? Estimate.None(string.Create(CultureInfo.InvariantCulture, $"too few: {years:0.0} of {options.FewestUnitYears:0} part-years"))
            : EventRate.Garwood(service.Again, years / 100, options.Confidence);
        return new FailureRate
        {
            Basis = RateBasis.PartYears,
            Grouping = grouping,
            ApplianceType = AllTypes,
            Supplier = grouping == BySupplier ? service.Supplier : null,
            SubjectKind = RateSubject.Component,
            Subject = service.Component,
            Events = service.Again,
            Exposure = years,
            ExposureUnit = "part-years",
            NotKnown = 0,
            Unit = "per 100 part-years",
            Estimate = raw.Value,
            Lower = raw.Lower,
            Upper = raw.Upper,
            Missing = raw.Missing,
            Shrunk = shrunk?.Value,
            ShrunkLower = shrunk?.Lower,
            ShrunkUpper = shrunk?.Upper,
            ShrunkOver = shrunk?.Value is null ? null : "suppliers",
        };
    }

    private static double Years(Service service) => service.Days / RateBasis.DaysPerYear;
}
