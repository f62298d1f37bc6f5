using System.Data.Common;
using System.Globalization;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Review;

/// <summary>Number of rows of a list that need an answer.</summary>
/// <param name="File">The list.</param>
/// <param name="Open">Rows without an answer.</param>
/// <param name="NotUnderstood">Rows whose answer could not be used; a note in the list says why.</param>
internal sealed record ReviewCount(string File, int Open, int NotUnderstood);

/// <summary>Writes lists of what the load could not decide, for the owner to answer.</summary>
internal static class ReviewLists
{
    private const int Suggestions = 3;

    /// <summary>
    /// Writes the lists to a folder. Answered rows stay on top with their answers, so that a newer list can replace an
    /// older one.
    /// </summary>
    public static IReadOnlyList<ReviewCount> Write(Database database, ReviewAnswers answers, string folder)
    {
        IReadOnlyList<string> kinds = [.. database.ReadTable<KnownKind>("complaint_kinds").Select(k => k.ComplaintKind)];
        Directory.CreateDirectory(folder);
        ILookup<(string, int), string> notes = database.Read<AnswerNote>("queries/review/answer_notes.sql")
            .ToLookup(n => (n.SourceFile, n.SourceLine), n => n.Note);
        List<ReviewCount> counts = [.. ReviewList.All.Select(list => WriteList(database, list, answers.Rows(list.File), notes, folder))];
        database.Stream("queries/review/data_faults.sql", r => ReviewFile.Write(Path.Combine(folder, ReviewNames.DataFaults), Columns(r), Rows(r)));
        File.WriteAllText(Path.Combine(folder, ReviewReadme.Name), ReviewReadme.Text(kinds, Components(database)));
        return counts;
    }

    private static ReviewCount WriteList(
        Database database, ReviewList list, IReadOnlyList<ReviewRow> answered, ILookup<(string File, int Line), string> notes, string folder)
    {
        OpenRows rows = Read(database, $"queries/review/{list.Sql}.sql");
        if (list.KnownKeys is not null)
        {
            rows = rows.With(Closest(database, $"queries/review/{list.KnownKeys}.sql", rows));
        }

        if (list.File is ReviewNames.Components or ReviewNames.Appliances)
        {
            rows = rows.With(Alike(rows, list.File == ReviewNames.Components ? Components(database) : ApplianceType.Named));
        }

        var known = answered.Select(a => list.Name(c => a[c])).ToHashSet(StringComparer.Ordinal);
        int[] identity = [.. list.Identity.Select(c => rows.Columns.ToList().IndexOf(c))];
        List<string?[]> open = [.. rows.Cells.Where(c => !known.Contains(string.Join('\u001f', identity.Select(i => c[i]))))];
        IEnumerable<IReadOnlyList<string?>> told = answered.Select(a =>
            (IReadOnlyList<string?>)[.. rows.Columns.Select(c => a[c]), string.Join(' ', notes[(a.File, a.Line)]), a.Answer]);
        ReviewFile.Write(
            Path.Combine(folder, list.File), [.. rows.Columns, ReviewFile.NoteColumn, ReviewFile.AnswerColumn], told.Concat(open.Select(c => (IReadOnlyList<string?>)[.. c, null, null])));
        return new ReviewCount(list.File, open.Count, answered.Count(a => notes.Contains((a.File, a.Line))));
    }

    private static OpenRows Read(Database database, string sql)
    {
        OpenRows? open = null;
        database.Stream(sql, r => open = new OpenRows(Columns(r), [.. Rows(r)]));
        return open!;
    }

    private static string[] Columns(DbDataReader rows) => [.. Enumerable.Range(0, rows.FieldCount).Select(rows.GetName)];

    private static IEnumerable<string?[]> Rows(DbDataReader rows)
    {
        while (rows.Read())
        {
            yield return [.. Enumerable.Range(0, rows.FieldCount).Select(i => rows.IsDBNull(i) ? null : Shown(rows.GetValue(i)))];
        }
    }

    private static string?[][] Closest(Database database, string keysSql, OpenRows rows)
    {
        int key = rows.Columns.ToList().FindIndex(c => c.EndsWith("_key", StringComparison.Ordinal));
        var known = new NumberSuggestions(database.Read<KnownNumber>(keysSql).Select(n => (n.Key, n.Number)));
        return [.. rows.Cells.Select(c =>
        {
            IReadOnlyList<NumberSuggestion> close = known.Closest(c[key] ?? "", Suggestions);
            return Enumerable.Range(0, Suggestions).Select(i => i < close.Count ? close[i].Number : null).ToArray();
        })];
    }

    private static IReadOnlyList<string> Components(Database database) => [.. database.ReadTable<KnownComponent>("component_roles").Select(c => c.Component)];

    // Names of the tables that share most of a row's words, which stand in its first column.
    private static string?[][] Alike(OpenRows rows, IReadOnlyList<string> known)
    {
        return [.. rows.Cells.Select(c =>
        {
            IReadOnlyList<string> alike = NameSuggestions.Find((c[0] ?? "").Replace('_', ' '), known, Suggestions);
            return Enumerable.Range(0, Suggestions).Select(i => i < alike.Count ? alike[i] : null).ToArray();
        })];
    }

    private sealed record KnownKind(string ComplaintKind);

    private sealed record KnownComponent(string Component);

    private sealed record AnswerNote(string SourceFile, int SourceLine, string Note);

    private sealed record KnownNumber(string Key, string Number);

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
