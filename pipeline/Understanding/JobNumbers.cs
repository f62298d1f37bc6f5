using System.Globalization;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Tells from sampled rows whether job numbers repeat for different days, within a log or from year to year.</summary>
internal static class JobNumbers
{
    private const int Fewest = 3;

    /// <summary>What to note about the job logs, or null if their numbers tell their jobs.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="maps">Their maps; null: left out.</param>
    public static string? Note(IReadOnlyList<SampledTable> tables, IReadOnlyList<SourceMap?> maps)
    {
        var days = new Dictionary<string, (int Rows, int Day, bool Differs)>(StringComparer.OrdinalIgnoreCase);
        for (int t = 0; t < tables.Count; t++)
        {
            if (maps[t] is not { Kind: "jobs" } map || Column(tables[t], map, "job_id") is not { } numbers || Column(tables[t], map, "opened_on") is not { } opened)
            {
                continue;
            }

            for (int i = 0; i < numbers.Cells.Length; i++)
            {
                if (numbers.Cells[i].Length > 0 && opened.Days[i] is { } day)
                {
                    string number = map.JobPrefix + numbers.Cells[i];
                    days[number] = days.TryGetValue(number, out (int Rows, int Day, bool Differs) known) ? (known.Rows + 1, day, known.Differs || known.Day != day) : (1, day, false);
                }
            }
        }

        int repeated = days.Values.Count(d => d.Rows > 1), differ = days.Values.Count(d => d.Differs);
        return differ < Fewest || differ * 5 < repeated ? null
            : string.Create(CultureInfo.InvariantCulture, $"Job numbers: of {repeated:N0} that stand on several rows looked at, {differ:N0} do so with different days, so the number alone tells no job. A load adds the year, the technician or the file, whichever tells them apart on all rows, and says which.");
    }

    private static ColumnSample? Column(SampledTable table, SourceMap map, string field) =>
        map.Columns.TryGetValue(field, out IReadOnlyList<string>? headers) && headers.Count == 1 ? table.Sample.Columns.FirstOrDefault(c => c.Name == headers[0]) : null;
}
