using System.Globalization;
using PartsSignal.Analysis.Rates;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Prints rates: for people a table per basis, for programs one list with every column.</summary>
internal static class RatesPrinter
{
    private const int SplitWidth = 12;

    /// <param name="writer">Where the rates are printed.</param>
    /// <param name="format">Output format.</param>
    /// <param name="rates">The rates.</param>
    /// <param name="untold">By basis: failures whose jobs do not say which machine it was, and how many of them the rates count.</param>
    public static void Print(TextWriter writer, OutputFormat format, IReadOnlyList<FailureRate> rates, Func<string, (long MayBe, double Counted)> untold)
    {
        if (format != OutputFormat.Table)
        {
            TablePrinter.Print(writer, format, rates, All);
            return;
        }

        if (rates.Count == 0)
        {
            writer.WriteLine("No calls match.");
        }

        foreach (IGrouping<(string Basis, string Kind), FailureRate> basis in rates.GroupBy(r => (r.Basis, r.SubjectKind)))
        {
            writer.WriteLine(Heading(basis.First()));
            writer.WriteLine("The true rate very likely lies between from and to.");
            if (basis.Any(r => r.AgeBand is not null))
            {
                writer.WriteLine(MachineAge.Words);
            }

            if (basis.Key.Kind == RateSubject.Component && untold(basis.Key.Basis) is { MayBe: > 0 } more)
            {
                TerminalText.Write(writer, string.Create(
                    CultureInfo.InvariantCulture,
                    $"{more.MayBe} more {(more.MayBe == 1 ? "failure may be on one of these machines; its job does not" : "failures may be on these machines; their jobs do not")} say which machine it was. The rates count {more.Counted:0.0} of them, the number to be expected; from and to run from none of them to all of them."));
            }

            TablePrinter.Print(writer, format, [.. basis], Short([.. basis]));
            if (basis.Any(r => r.Missing is not null))
            {
                writer.WriteLine("-: " + basis.First(r => r.Missing is not null).Missing!.Split(':')[0]);
            }

            writer.WriteLine();
        }
    }

    private static string Heading(FailureRate rate) =>
        (rate.SubjectKind == RateSubject.Complaint ? "The complaint, " : "") + RateBasis.Words(rate.Basis)
        + (rate.Basis == RateBasis.ShareOfCalls ? " in %" : "");

    private static List<TableColumn<FailureRate>> Short(IReadOnlyList<FailureRate> rates)
    {
        bool share = rates[0].Basis == RateBasis.ShareOfCalls, parts = rates[0].Basis == RateBasis.PartYears;
        string figure = share ? "0.0" : "0.00";
        double scale = share ? 100 : 1;
        var columns = new List<TableColumn<FailureRate>>();
        void Split(string name, string heading, Func<FailureRate, string?> member)
        {
            if (rates.Any(r => member(r) is not null))
            {
                columns.Add(new(name, heading, r => Cut(member(r) ?? "(all)", SplitWidth)));
            }
        }

        Split("appliance_type", "appliance", r => parts ? null : r.ApplianceType);
        Split("model_family", "family", r => r.ModelFamily);
        Split("brand", "brand", r => r.Brand);
        Split("age_band", "age", r => r.AgeBand);
        Split("given_complaint", "complaint", r => r.GivenComplaint);
        Split("supplier", "supplier", r => r.Supplier);
        Split("group_value", rates[0].Grouping.Replace('_', ' '), r => r.GroupValue);

        columns.Add(new("subject", "what", r => r.Subject));
        columns.Add(new("events", "n", r => r.Events));
        columns.Add(new("exposure", share ? "of" : parts ? "part-years" : "unit-years", r => r.Exposure, share ? "0" : "0.0"));
        columns.Add(new("estimate", "rate", r => r.Estimate * scale, figure));
        columns.Add(new("lower", "from", r => r.Lower * scale, figure));
        columns.Add(new("upper", "to", r => r.Upper * scale, figure));
        if (rates.Any(r => r.Shrunk is not null))
        {
            columns.Add(new("shrunk", "shrunk", r => r.Shrunk * scale, figure));
        }

        return columns;
    }

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
        new("supplier", "supplier", r => r.Supplier),
        new("group_value", "group", r => r.GroupValue),
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
        new("untold", "untold", r => r.Untold),
        new("untold_expected", "untold expected", r => r.UntoldExpected),
    ];
}
