using System.Globalization;
using PartsSignal.Analysis.FailureRates;
using PartsSignal.Pipeline.Commands.Output;

namespace PartsSignal.Pipeline.Commands.Rates;

/// <summary>Prints rates: for people a table per basis, for programs one list with every column.</summary>
internal static class RatesPrinter
{
    private const int FamilyWidth = 11;

    public static void Print(TextWriter writer, OutputFormat format, IReadOnlyList<FailureRate> rates)
    {
        if (format != OutputFormat.Table)
        {
            TablePrinter.Print(writer, format, rates, All);
            return;
        }

        if (rates.Count == 0)
        {
            writer.WriteLine("No such calls.");
        }

        foreach (IGrouping<(string Basis, string Kind), FailureRate> basis in rates.GroupBy(r => (r.Basis, r.SubjectKind)))
        {
            writer.WriteLine(Heading(basis.First()));
            TablePrinter.Print(writer, format, [.. basis], Short(basis.Any(r => r.ModelFamily is not null)));
            writer.WriteLine();
        }
    }

    private static string Heading(FailureRate rate) =>
        (rate.SubjectKind == RateSubject.Complaint ? "The complaint, " : "") + RateBasis.Words(rate.Basis) + ", 95 % intervals";

    private static List<TableColumn<FailureRate>> Short(bool family)
    {
        var columns = new List<TableColumn<FailureRate>> { new("appliance_type", "appliance", r => r.ApplianceType) };
        if (family)
        {
            columns.Add(new("model_family", "family", r => Cut(r.ModelFamily ?? "(all)", FamilyWidth)));
        }

        columns.Add(new("subject", "what", r => r.Subject));
        columns.Add(new("events", "n", r => r.Events));
        columns.Add(new("exposure", "of", r => Math.Round(r.Exposure, r.ExposureUnit == "calls" ? 0 : 1)));
        columns.Add(new("estimate", "rate", r => Figure(r, r.Estimate) ?? "too few"));
        columns.Add(new("interval", "interval", r => Interval(r)));
        columns.Add(new("shrunk", "shrunk", r => Figure(r, r.Shrunk)));
        return columns;
    }

    private static string? Interval(FailureRate rate) =>
        rate.Estimate is null ? null : $"{Figure(rate, rate.Lower)} to {(rate.Upper is null ? "?" : Figure(rate, rate.Upper))}";

    private static string? Figure(FailureRate rate, double? value) => value is not { } v ? null
        : rate.ExposureUnit == "calls" ? (v * 100).ToString("0.0", CultureInfo.InvariantCulture) + "%"
        : v.ToString(v < 10 ? "0.00" : "0.0", CultureInfo.InvariantCulture);

    private static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)] + "…";

    private static readonly TableColumn<FailureRate>[] All =
    [
        new("basis", "basis", r => r.Basis),
        new("grouping", "grouping", r => r.Grouping),
        new("appliance_type", "appliance", r => r.ApplianceType),
        new("brand", "brand", r => r.Brand),
        new("model_family", "family", r => r.ModelFamily),
        new("age_band", "age", r => r.AgeBand),
        new("given_complaint", "complaint", r => r.GivenComplaint),
        new("subject_kind", "kind", r => r.SubjectKind),
        new("subject", "what", r => r.Subject),
        new("events", "n", r => r.Events),
        new("exposure", "of", r => r.Exposure),
        new("exposure_unit", "unit of exposure", r => r.ExposureUnit),
        new("not_known", "not known", r => r.NotKnown),
        new("unit", "unit", r => r.Unit),
        new("estimate", "rate", r => r.Estimate),
        new("lower", "lower", r => r.Lower),
        new("upper", "upper", r => r.Upper),
        new("missing", "missing", r => r.Missing),
        new("shrunk", "shrunk", r => r.Shrunk),
        new("shrunk_lower", "shrunk lower", r => r.ShrunkLower),
        new("shrunk_upper", "shrunk upper", r => r.ShrunkUpper),
        new("shrunk_over", "shrunk over", r => r.ShrunkOver),
    ];
}
