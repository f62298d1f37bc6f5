using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the age curves that can be drawn.</summary>
internal static class AgeReader
{
    private const string AllFamilies = "all";
    private const string Register = "register";

    private sealed record Row(
        string Type, string Component, string Family, string Basis, string? Condition, long Units, long Failures,
        double? Median, double? MedianLower, double? MedianUpper, string? MedianMissing, string? Nature, double? OthersRatio);

    public static AgeFacts? Read(Database database)
    {
        if (!database.Has("age_curve_summary") || !database.Has("age_curve_points"))
        {
            return null;
        }

        IReadOnlyList<Row> rows = database.Read("queries/report/age_curves.sql", r => new Row(
            r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3), r.Text(4), r.Long(5) ?? 0, r.Long(6) ?? 0,
            r.Double(7), r.Double(8), r.Double(9), r.Text(10), r.Text(11), r.Double(12)));
        var groups = rows.GroupBy(r => (r.Basis, r.Type, r.Component)).Select(g => Group(database, [.. g]));
        IReadOnlyList<AgeRefusal> refused = database.Read("queries/report/ages_not_drawn.sql", r => new AgeRefusal(
            $"{Format.Words(r.GetString(0))} {Format.Words(r.GetString(1))}", r.Long(2) ?? 0, r.Text(3) ?? "not known"));
        return new AgeFacts([.. groups], refused);
    }

    private static AgeGroup Group(Database database, IReadOnlyList<Row> rows)
    {
        Row whole = rows.FirstOrDefault(r => r.Family == AllFamilies) ?? rows[0];
        bool register = whole.Basis == Register;
        string title = $"{Format.Words(whole.Type)}, {Format.Words(whole.Component)}: share {(register ? "still without a failure" : "of failures not yet come")}";
        string method = register
            ? "Registered appliances, watched whether they fail or not; entry at the age they were first watched (Kaplan and Meier)."
            : $"Job log alone, corrected for ages the log could not see, {whole.Condition}; how many fail at all is not in a log.";
        return new AgeGroup(
            Capital(title), method, $"{Format.Count(whole.Units)} units, {Format.Count(whole.Failures)} first failures.", Conclusion(whole, rows),
            register ? "without failure, %" : "not failed yet, %", [.. rows.Select(r => new Curve(Name(r), Points(database, r), Steps: true))]);
    }

    private static string Conclusion(Row whole, IReadOnlyList<Row> rows)
    {
        string half = whole.Median is { } median
            ? $"Half {(whole.Basis == Register ? "have failed" : $"of those {whole.Condition?.Replace("given that it fails", "that fail", StringComparison.Ordinal)} have failed")} by {Format.Number(median)} years{Range(whole)}."
            : $"The age by which half have failed is not known ({whole.MedianMissing ?? "not reached"}).";
        string nature = whole.Nature switch
        {
            "wear" => " The rate grows with age: wear.",
            "early" => " The rate falls with age: early failures.",
            "chance" => " The rate hardly changes with age: chance.",
            _ => "",
        };
        string apart = string.Concat(rows.Where(r => r.Family != AllFamilies && r.OthersRatio is not null)
            .Select(r => $" Family {r.Family} failed {Format.Number(r.OthersRatio!.Value)} times as often as its type would at the same ages."));
        return half + nature + apart;
    }

    private static string Range(Row row) => (row.MedianLower, row.MedianUpper) switch
    {
        ({ } low, { } high) => $" ({Format.Number(low)}\u2013{Format.Number(high)})",
        ({ } low, null) => $" (from {Format.Number(low)})",
        _ => "",
    };

    private static string Name(Row row) => row.Family == AllFamilies ? "all families" : $"family {row.Family}";

    private static IReadOnlyList<CurvePoint> Points(Database database, Row row) => database.Read("queries/report/age_points.sql", r => new CurvePoint(
        r.Double(0)!.Value, 100 * (1 - r.Double(1)!.Value), r.Double(3) is { } upper ? 100 * (1 - upper) : null, r.Double(2) is { } lower ? 100 * (1 - lower) : null),
        ("type", row.Type), ("component", row.Component), ("family", row.Family), ("basis", row.Basis));

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
