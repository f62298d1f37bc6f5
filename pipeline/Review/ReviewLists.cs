using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Review;

/// <summary>How many rows of a list wait for an answer.</summary>
/// <param name="File">The list.</param>
/// <param name="Open">Rows without an answer.</param>
public sealed record ReviewCount(string File, int Open);

/// <summary>Writes what the load could not decide by itself as lists for the owner.</summary>
public static class ReviewLists
{
    private const int Suggestions = 3;

    /// <summary>
    /// Replaces the folder of lists. Rows answered earlier stay on top with their answers, so that a newer list can be
    /// dropped over an older one.
    /// </summary>
    public static IReadOnlyList<ReviewCount> Write(Database database, ReviewAnswers answers, string folder)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(folder))!);
        using var swap = new FolderSwap(folder);
        var counts = new List<ReviewCount>();
        foreach ((string name, string sql, string? keys) in Lists)
        {
            OpenRows rows = Read(database, $"Review/{sql}.sql");
            if (keys is not null)
            {
                rows = rows.With(Closest(database, $"Review/{keys}.sql", rows));
            }

            IReadOnlyList<ReviewRow> answered = answers.Of(name);
            string[] columns = [.. rows.Columns, ReviewFile.AnswerColumn];
            string[] known = [.. answered.Select(a => Identity(a, rows.Columns))];
            List<string?[]> open = [.. rows.Cells.Where(c => !known.Contains(c[0] + "\u001f" + c[1])).Select(c => (string?[])[.. c, null])];
            ReviewFile.Write(
                Path.Combine(swap.Filling, name), columns, answered.Select(a => (IReadOnlyList<string?>)[.. columns.Select(c => a[c])]).Concat(open));
            counts.Add(new ReviewCount(name, open.Count));
        }

        swap.Commit();
        return counts;
    }

    private static readonly IReadOnlyList<(string Name, string Sql, string? Keys)> Lists =
    [
        (ReviewNames.PartNumbers, "part_numbers", "catalogue_keys"),
        (ReviewNames.Complaints, "complaints", null),
        (ReviewNames.Components, "components", null),
        (ReviewNames.Families, "families", null),
        (ReviewNames.Models, "models", "model_keys"),
        (ReviewNames.Serials, "serials", null),
        (ReviewNames.Collisions, "collisions", null),
    ];

    private static string Identity(ReviewRow row, IReadOnlyList<string> columns) => row[columns[0]] + "\u001f" + row[columns[1]];

    private static OpenRows Read(Database database, string sql)
    {
        string[] columns = [];
        IReadOnlyList<string?[]> cells = database.Read(sql, r =>
        {
            columns = columns.Length > 0 ? columns : [.. Enumerable.Range(0, r.FieldCount).Select(r.GetName)];
            return Enumerable.Range(0, r.FieldCount).Select(i => r.IsDBNull(i) ? null : Shown(r.GetValue(i))).ToArray();
        });
        return new OpenRows(columns.Length > 0 ? columns : Columns(database, sql), cells);
    }

    private static string[] Columns(Database database, string sql)
    {
        using var command = database.Connection.CreateCommand();
        command.CommandText = SqlText.Read(sql);
        using var reader = command.ExecuteReader();
        return [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetName)];
    }

    private static string?[][] Closest(Database database, string keysSql, OpenRows rows)
    {
        int key = rows.Columns.ToList().FindIndex(c => c.EndsWith("_key", StringComparison.Ordinal));
        var known = new NumberSuggestions(database.Read(keysSql, r => (r.GetString(0), r.GetString(1))));
        return [.. rows.Cells.Select(c =>
        {
            IReadOnlyList<NumberSuggestion> close = known.Closest(c[key] ?? "", Suggestions);
            return Enumerable.Range(0, Suggestions).Select(i => i < close.Count ? close[i].Number : null).ToArray();
        })];
    }

    private static string Shown(object value) => value switch
    {
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };

    private sealed record OpenRows(IReadOnlyList<string> Columns, IReadOnlyList<string?[]> Cells)
    {
        public OpenRows With(string?[][] suggestions) => new(
            [.. Columns, .. Enumerable.Range(1, Suggestions).Select(i => $"suggestion_{i}")],
            [.. Cells.Zip(suggestions, (c, s) => (string?[])[.. c, .. s])]);
    }
}
