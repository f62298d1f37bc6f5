using System.Globalization;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Makes staged files visible to the SQL that transforms them.</summary>
internal static class StagedViews
{
    /// <summary>
    /// Creates one view per staged table over the files of all sources, or a table where the session holds little. A table no source has is empty. A file's name
    /// and position come from the list, not from its rows, because a file staged earlier may have been renamed or moved.
    /// </summary>
    /// <param name="database">The session.</param>
    /// <param name="sources">The staged files.</param>
    /// <param name="vans">Keys of the settings' vans, where vans that are named after someone get labels; null: no van gets one.</param>
    /// <returns>The labels.</returns>
    public static VanLabels Attach(Database database, IReadOnlyList<StagedFile> sources, IReadOnlyList<string>? vans = null)
    {
        foreach (string table in StagedSchema.Tables)
        {
            StagedSchema.CreateEmpty(database, table);
            StagedFile[] holders = [.. sources.Where(s => s.Tables.ContainsKey(table))];
            if (holders.Length > 0)
            {
                string empty = Database.Quote(table + "_shape");
                database.Execute($"alter table {Database.Quote(table)} rename to {empty}");
                string rows = string.Join(" union all by name ", holders.Select(s => "(" + Rows(s, s.Tables[table]) + ")"));
                database.Execute($"create {Kind(database)} {Database.Quote(table)} as (from {empty}) union all by name {rows}");
            }
        }

        VanLabels labels = LabelVans(database, vans);
        KeepListedSerials(database);
        StagedSchema.SetIdentity(database);
        ResultTable.Write(database, "source_files", sources.Select(s =>
            new SourceRow(s.SourceOrder, s.SourceFile, s.ContentHash, s.Kind, s.RowsRead, s.Rejected, s.OnePartPerRow)));
        ResultTable.Write(database, "file_languages", sources.Select(s => new LanguageRow(s.SourceOrder, s.Languages.Count == 0 ? null : string.Join(' ', s.Languages))));
        database.Run("staging/rejected_rows.sql");
        foreach (StagedFile source in sources.Where(s => s.Rejects is not null))
        {
            database.Execute("insert into rejected_rows by name " + SqlText.Fill(
                "statements/refused_rows.sql",
                ("source_file", Database.Literal(source.SourceFile)), ("source_order", source.SourceOrder.ToString(CultureInfo.InvariantCulture)), ("rows", Parquet(source.Rejects!))));
        }

        ResultTable.Write(database, "mended_rows", sources.SelectMany(s => s.MendedLines.Select(l => new MendedRow(s.SourceOrder, l))));
        ResultTable.Write(database, "mended_part_lines", sources.SelectMany(s => s.MendedPartLines.Select(l => new MendedPartRow(s.SourceOrder, l.SourceLine, l.Message))));
        return labels;
    }

    // Two vans may share their initials only when all files are known.
    private static VanLabels LabelVans(Database database, IReadOnlyList<string>? vans)
    {
        VanLabels labels = vans is null
            ? VanLabels.None : VanLabels.Create(database.Read<string>("queries/session/staged_vans.sql").Concat(vans.Where(v => VanName.InitialsOf(v) is not null)));
        ResultTable.Write(database, "staged_van_labels", labels.Labels.Select(l => new LabelRow(l.Key, l.Value)));
        if (labels.Labels.Count > 0)
        {
            database.Execute($"alter {Kind(database)} staged_jobs rename to staged_jobs_by_key");
            database.Execute($"alter {Kind(database)} staged_van_counts rename to staged_van_counts_by_key");
            database.Run("staging/labeled_jobs.sql");
            database.Run("staging/labeled_van_counts.sql");
        }

        return labels;
    }

    // A serial of one or two characters tells machines apart only where the register lists it.
    private static void KeepListedSerials(Database database)
    {
        if (database.Read<long>("queries/session/short_serials.sql")[0] > 0)
        {
            database.Execute($"alter {Kind(database)} staged_jobs rename to staged_jobs_as_typed");
            database.Run("staging/listed_serials.sql");
        }
    }

    private static string Kind(Database database) => database.HoldsLittle ? "table" : "view";

    private static string Rows(StagedFile source, string file) =>
        SqlText.Fill(
            "statements/staged_file.sql",
            ("source_file", Database.Literal(source.SourceFile)), ("source_order", source.SourceOrder.ToString(CultureInfo.InvariantCulture)), ("rows", Parquet(file)));

    private static string Parquet(string file) => $"read_parquet({Database.Literal(file.Replace('\\', '/'))}, hive_partitioning = false)";

    private sealed record MendedRow(int SourceOrder, int SourceLine);

    private sealed record MendedPartRow(int SourceOrder, int? SourceLine, string Message);

    private sealed record LabelRow(string VanKey, string Van);

    private sealed record LanguageRow(int SourceOrder, string? Languages);

    private sealed record SourceRow(int SourceOrder, string SourceFile, string ContentHash, string Kind, long RowsRead, long Rejected, bool OnePartPerRow);
}
