using System.Text.Encodings.Web;
using System.Text.Json;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>A table as it lies in the folder: its file, and its sheet if the file is a workbook.</summary>
internal sealed record PlacedTable(string File, string? Sheet, TableDraft Table);

/// <summary>Writes truth.json: what each table and column is, and counts that any right reading must reach.</summary>
internal static class DialectTruth
{
    private const int TopComponents = 5;

    public static void Write(string path, long seed, Dialect dialect, ShopHistory shop, IReadOnlyList<PlacedTable> tables)
    {
        using FileStream file = File.Create(path);
        using var json = new Utf8JsonWriter(file, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        json.WriteStartObject();
        json.WriteString("set", $"dialect-{seed.ToString("00000", System.Globalization.CultureInfo.InvariantCulture)}");
        json.WriteString("origin", "generated");
        json.WriteString("dialect", dialect.Summary);
        json.WriteStartArray("files");
        foreach (PlacedTable table in tables)
        {
            WriteTable(json, table);
        }

        json.WriteEndArray();
        WriteAnswers(json, dialect, shop, tables);
        json.WriteEndObject();
    }

    private static void WriteTable(Utf8JsonWriter json, PlacedTable placed)
    {
        TableDraft table = placed.Table;
        json.WriteStartObject();
        json.WriteString("file", placed.File);
        json.WriteString("sheet", placed.Sheet);
        json.WriteString("kind", table.Kind);
        WriteList(json, "kind_ok", table.KindsAlsoRight);
        json.WriteNumber("rows", table.Rows);
        json.WriteStartObject("columns");
        foreach (IGrouping<string, string> field in table.Columns.SelectMany(c => c.Fields.Select(f => (f, c.Header))).GroupBy(p => p.f, p => p.Header, StringComparer.Ordinal))
        {
            WriteList(json, field.Key, [.. field]);
        }

        json.WriteEndObject();
        WriteList(json, "essential", table.Essential);
        json.WriteStartObject("forbidden");
        foreach (ColumnDraft column in table.Columns.Where(c => c.Never.Count > 0))
        {
            WriteList(json, column.Header, column.Never);
        }

        json.WriteEndObject();
        json.WriteString("note", table.Note);
        json.WriteEndObject();
    }

    private static void WriteAnswers(Utf8JsonWriter json, Dialect dialect, ShopHistory shop, IReadOnlyList<PlacedTable> tables)
    {
        // a status word closes a job that was called off too; fair people count those either way
        Call[] closed = [.. shop.Calls.Where(c => c.End != CallEnd.Open)];
        int kept = closed.Count(c => c.End != CallEnd.Cancelled);
        int withPart = closed.Count(c => c.Parts.Count > 0);
        bool partsTold = dialect.Parts != PartLayout.None;
        json.WriteStartObject("answers");
        json.WriteNumber("jobs", shop.Calls.Count);
        WritePair(json, "closed_jobs", dialect.End is Ending.Closed or Ending.ClosedAndOutcome ? closed.Length : kept, closed.Length);
        if (partsTold)
        {
            WritePair(json, "jobs_with_known_cause", withPart, closed.Length);
        }
        else
        {
            json.WriteNull("jobs_with_known_cause");
        }

        WriteTop(json, dialect, closed, tables);
        TableDraft? register = tables.Select(t => t.Table).FirstOrDefault(t => t.Kind == "units");
        if (register is null)
        {
            json.WriteNull("units_registered");
        }
        else
        {
            json.WriteNumber("units_registered", register.Rows);
        }

        json.WriteEndObject();
    }

    private static void WriteTop(Utf8JsonWriter json, Dialect dialect, Call[] closed, IReadOnlyList<PlacedTable> tables)
    {
        bool named = dialect.Naming != PartNaming.Number || tables.Any(t => t.Table.Kind == "parts");
        if (dialect.Parts == PartLayout.None)
        {
            json.WriteNull("top_components_or_parts");
            json.WriteStartObject("aka");
            json.WriteEndObject();
            return;
        }

        (string Name, int Jobs, string[] Aka)[] top = [.. closed
            .SelectMany(c => c.Parts.Select(p => (Call: c, p.Part, Name: named ? p.Part.Name : p.Part.Number)).DistinctBy(p => p.Name))
            .GroupBy(p => p.Name, StringComparer.Ordinal)
            .Select(g => (g.Key, g.Count(), g.SelectMany(p => new[] { p.Part.Number, p.Part.NewNumber }).OfType<string>().Append(g.Key).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray()))
            .OrderByDescending(t => t.Item2).ThenBy(t => t.Key, StringComparer.Ordinal)
            .Take(TopComponents)];
        json.WriteStartArray("top_components_or_parts");
        foreach ((string name, int jobs, _) in top)
        {
            json.WriteStartArray();
            json.WriteStringValue(name);
            json.WriteNumberValue(jobs);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteStartObject("aka");
        foreach ((string name, _, string[] aka) in top)
        {
            WriteList(json, name, aka);
        }

        json.WriteEndObject();
    }

    private static void WritePair(Utf8JsonWriter json, string name, int least, int most)
    {
        if (least == most)
        {
            json.WriteNumber(name, least);
            return;
        }

        json.WriteStartArray(name);
        json.WriteNumberValue(least);
        json.WriteNumberValue(most);
        json.WriteEndArray();
    }

    private static void WriteList(Utf8JsonWriter json, string name, IReadOnlyList<string> values)
    {
        json.WriteStartArray(name);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }
}
