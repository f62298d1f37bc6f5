using System.Text;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

/// <summary>Draws which table is made from which, in pieces small enough to read.</summary>
internal static class SqlLineage
{
    private const int MostStaged = 5;

    // Where a diagram ends. A table that no diagram is named for is drawn in the first one that needs it.
    private static readonly (string Title, string[] Ends)[] LoadDiagrams =
    [
        ("Which rows count", ["int_row_status", "int_orphan_part_lines"]),
        ("Part numbers", ["supersessions", "part_aliases", "int_resolved_part_numbers"]),
        ("Parts, orders and part lines", ["parts", "part_orders", "job_parts", "van_counts"]),
        ("Models", ["models", "int_resolved_models"]),
        ("Appliances", ["int_job_units", "int_register_units"]),
        ("Build dates", ["build_dates"]),
        ("Jobs", ["jobs"]),
        ("The rest of the store", [.. StoreTables.Names]),
    ];

    /// <summary>Diagrams of the load, then one per capability of results.</summary>
    public static string Text()
    {
        var text = new StringBuilder();
        var drawn = new HashSet<string>(StringComparer.Ordinal);
        text.Append("### From staged rows to the store\n");
        foreach ((string title, string[] ends) in LoadDiagrams)
        {
            Draw(text, title, drawn, [.. ends.Select(e => SqlModels.Find(e)!).Where(m => !drawn.Contains(m.Table))]);
        }

        text.Append("\n### From the store to the results\n");
        foreach (IGrouping<string, SqlModel> folder in SqlModels.All.Where(m => m.Path.StartsWith("results/", StringComparison.Ordinal))
            .GroupBy(m => m.Path.Split('/')[1]).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Draw(text, folder.Key, drawn, [.. folder]);
        }

        return text.ToString();
    }

    private static void Draw(StringBuilder text, string title, HashSet<string> drawn, IReadOnlyList<SqlModel> ends)
    {
        IReadOnlyList<SqlModel> models = SqlModels.Order(ends, drawn.Contains);
        drawn.UnionWith(models.Select(m => m.Table));
        var own = models.Select(m => m.Table).ToHashSet(StringComparer.Ordinal);
        string[] sources = [.. models.SelectMany(m => m.Reads).Where(t => !own.Contains(t)).Distinct(StringComparer.Ordinal)];
        bool joinStaged = sources.Count(IsStaged) > MostStaged;
        string Name(string table) => joinStaged && IsStaged(table) ? "staged" : table;

        text.Append(System.Globalization.CultureInfo.InvariantCulture, $"\n#### {title}\n\n```mermaid\nflowchart LR\n");
        foreach (string source in sources.Select(Name).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            text.Append("    ").Append(source).Append('(').Append(source == "staged" ? "staged rows of every kind" : source).Append(")\n");
        }

        foreach (SqlModel model in models)
        {
            (string open, string close) = model.IsStored || model.Materialization == Materialization.Result ? ("[[", "]]")
                : model.IsView ? ("[/", "/]") : ("[", "]");
            string reads = string.Join(" & ", model.Reads.Select(Name).Distinct(StringComparer.Ordinal));
            text.Append("    ").Append(reads).Append(reads.Length > 0 ? " --> " : "").Append(model.Table).Append(open).Append(model.Table).Append(close).Append('\n');
        }

        text.Append("```\n");
    }

    private static bool IsStaged(string table) => table.StartsWith("staged_", StringComparison.Ordinal);
}
