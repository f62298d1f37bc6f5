using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Failures that may or may not be on a listed machine, because the job does not tell which machine it was.</summary>
internal sealed class UntoldFailures
{
    private readonly Dictionary<(string Type, string Component), Row> _rows;

    private UntoldFailures(Dictionary<(string, string), Row> rows) => _rows = rows;

    /// <summary>Reads them; nothing is said where they were not counted.</summary>
    public static UntoldFailures Read(Database database) => new(
        database.Has("register_untold") ? database.ReadTable<Row>("register_untold").ToDictionary(r => (r.ApplianceType, r.Component)) : []);

    /// <summary>A sentence that says how they are counted, with a blank before it; empty if no job is untold.</summary>
    public string Describe(string type, string component) => !_rows.TryGetValue((type, component), out Row? row) || row.Untold == 0
        ? ""
        : $" {Format.Count(row.Untold)} more {(row.Untold == 1 ? "failure may be on one of these machines; its job does not" : "failures may be on these machines; their jobs do not")} say which machine it was. The figures count {(row.Expected < 0.05 ? "none" : row.Expected.ToString("0.0", CultureInfo.InvariantCulture))} of them, the number to be expected; the ranges run from none of them to all of them.";

    private sealed record Row(string ApplianceType, string Component, long Listed, long Untold, double Expected);
}
