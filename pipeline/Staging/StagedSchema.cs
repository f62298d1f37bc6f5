using System.Text;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The shape of the staged tables in SQL, as the catalog of fields gives it.</summary>
internal static class StagedSchema
{
    /// <summary>Hash of the row's mapped text: the same row again has the same hash. Null for a part line that came with a job row.</summary>
    public static readonly StagedColumnSpec RowHash = new("row_hash", ColumnType.Identifier);

    /// <summary>Line of the source row.</summary>
    public static readonly StagedColumnSpec SourceLine = new("source_line", ColumnType.Int, Required: true);

    // The file of a row: its name, and its position in shop.json, then within its pattern.
    private static readonly StagedColumnSpec[] Source = [new("source_file", ColumnType.Word, true), new("source_order", ColumnType.Int, true)];

    /// <summary>Names of the staged tables.</summary>
    public static IReadOnlyList<string> Tables => FieldCatalog.Tables;

    /// <summary>Columns of a staged Parquet file.</summary>
    public static IReadOnlyList<StagedColumnSpec> Columns(string table) => [.. FieldCatalog.Columns(table), RowHash, SourceLine];

    /// <summary>Creates one empty staged table.</summary>
    public static void CreateEmpty(Database database, string table)
    {
        var create = new StringBuilder("create or replace table ").Append(Database.Quote(table)).Append(" (");
        create.AppendJoin(", ", Columns(table).Concat(Source)
            .Select(c => $"{Database.Quote(c.Name)} {SqlType(c.Type)}{(c.Required ? " not null" : "")}")).Append(')');
        database.Execute(create.ToString());
    }

    /// <summary>Lets queries compare rows of a job by the columns that the catalog names.</summary>
    public static void SetIdentity(Database database) =>
        database.Execute("set variable job_identity = string_split($columns, ',')", ("columns", string.Join(',', FieldCatalog.IdentityColumns("jobs"))));

    private static string SqlType(ColumnType type) => type switch
    {
        ColumnType.Int => "integer",
        ColumnType.Double => "double",
        ColumnType.Money => "decimal(12,2)",
        ColumnType.Flag => "boolean",
        ColumnType.Day => "date",
        ColumnType.Time => "timestamp",
        _ => "varchar",
    };
}
