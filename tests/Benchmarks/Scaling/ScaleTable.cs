using System.Globalization;
using System.Text;

namespace PartsSignal.Benchmarks.Scaling;

/// <summary>A row a step, a column a size, and how time and peak grow: the exponent p of jobs^p.</summary>
internal sealed class ScaleTable(IReadOnlyList<long> sizes)
{
    private static readonly Dictionary<string, string> Titles = new(StringComparer.Ordinal)
    {
        [ScaleSteps.Ingest] = "ingest (staging only)",
        [ScaleSteps.TypedCopy] = "engine's bare CSV to Parquet copy, types detected (its default)",
        [ScaleSteps.TextCopy] = "engine's bare CSV to Parquet copy, all text",
        ["rates-sql"] = "rates: the same SQL by hand",
        ["run"] = "whole run, files already staged",
        ["lookup"] = "lookup, cold",
    };

    private readonly Dictionary<(long Size, string Step), StepCost> _costs = [];

    /// <summary>True when a step did not end well.</summary>
    public bool Failed { get; set; }

    /// <summary>Takes a measurement in.</summary>
    public void Add(long size, string step, StepCost cost) => _costs[(size, step)] = cost;

    /// <summary>The table, and how often longer than the engine's copy the ingest took.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        text.Append("| step: seconds / MB allocated / MB at the peak |").AppendJoin("", sizes.Select(s => $" {Count(s)} jobs |"));
        text.AppendLine(" time grows as, last two sizes | first to last | peak, last two |");
        text.Append("| --- |").Insert(text.Length, " ---: |", sizes.Count + 3).AppendLine();
        foreach (string step in ScaleSteps.Names.Where(n => sizes.Any(s => _costs.ContainsKey((s, n)))))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Titles.GetValueOrDefault(step, step.Replace('-', ' '))} |");
            text.AppendJoin("", sizes.Select(s => $" {Cost(_costs.GetValueOrDefault((s, step)))} |"));
            text.Append(CultureInfo.InvariantCulture, $" {Exponent(step, sizes[Math.Max(0, sizes.Count - 2)], c => c.Seconds)} |");
            text.Append(CultureInfo.InvariantCulture, $" {Exponent(step, sizes[0], c => c.Seconds)} |");
            text.AppendLine(CultureInfo.InvariantCulture, $" {Exponent(step, sizes[Math.Max(0, sizes.Count - 2)], c => c.PeakMegabytes)} |");
        }

        foreach ((string step, string of, string title) in (ReadOnlySpan<(string, string, string)>)
            [(ScaleSteps.Ingest, ScaleSteps.TypedCopy, "ingest / copy, types detected"), (ScaleSteps.Ingest, ScaleSteps.TextCopy, "ingest / copy, all text"), ("rates", "rates-sql", "rates / SQL by hand")])
        {
            if (sizes.Any(s => Ratio(s, step, of) is not null))
            {
                text.AppendLine(CultureInfo.InvariantCulture, $"| {title} |{string.Concat(sizes.Select(s => Ratio(s, step, of) is { } r ? string.Create(CultureInfo.InvariantCulture, $" {r:0.0} x |") : " |"))} | | |");
            }
        }

        return text.ToString();
    }

    private double? Ratio(long size, string step, string of) =>
        _costs.TryGetValue((size, step), out StepCost? a) && _costs.TryGetValue((size, of), out StepCost? b) ? a.Seconds / b.Seconds : null;

    private string Exponent(string step, long from, Func<StepCost, double> what)
    {
        long to = sizes[^1];
        return from < to && _costs.TryGetValue((from, step), out StepCost? a) && _costs.TryGetValue((to, step), out StepCost? b) && what(a) > 0
            ? (Math.Log(what(b) / what(a)) / Math.Log((double)to / from)).ToString("0.00", CultureInfo.InvariantCulture)
            : "";
    }

    private static string Count(long n) => n.ToString("N0", CultureInfo.InvariantCulture);

    private static string Cost(StepCost? cost) => cost is null ? "" : string.Create(
        CultureInfo.InvariantCulture, $"{cost.Seconds:0.0} / {(cost.AllocatedMegabytes is { } a ? Count(a) : "-")} / {Count(cost.PeakMegabytes)}");
}
