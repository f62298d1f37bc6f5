using System.Text.Json.Nodes;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Tests.Sql;

public sealed class SqlReferencesTests
{
    [Theory]
    [InlineData("select 1 from a join b using (x)", "a b")]
    [InlineData("with a as (from b) select * from a", "b")]
    [InlineData("with recursive a(x, y) as (select x, y from b union select x, y from a) from a", "b")]
    [InlineData("with a as not materialized (from b) from a, (from c)", "b c")]
    [InlineData("select 'from d' -- from e\nfrom \"f\"", "f")]
    [InlineData("select x from a where x is not distinct from y and z is distinct from w", "a")]
    [InlineData("select distinct from_van from read_parquet('a') semi join b on true where x in (from c)", "b c")]
    public void TablesRead_Query_NamesItsTables(string sql, string expected) =>
        Assert.Equal(expected, string.Join(' ', SqlReferences.TablesRead(sql)));

    [Fact]
    public void TablesRead_EveryFile_AgreesWithTheEnginesParser()
    {
        using var database = Database.Open();
        string[] paths = [.. new[] { "intermediate", "marts", "results", "queries" }.SelectMany(SqlText.List)
            .Where(p => !p.EndsWith(".contract.sql", StringComparison.Ordinal) && !p.EndsWith("arrows_known.sql", StringComparison.Ordinal))];
        Assert.All(paths, path =>
        {
            string json = database.Query("select json_serialize_sql($sql::varchar)", r => r.GetString(0), ("sql", SqlText.Read(path)))[0];
            var own = new HashSet<string>(StringComparer.Ordinal);
            var read = new SortedSet<string>(StringComparer.Ordinal);
            Collect(JsonNode.Parse(json, documentOptions: new() { MaxDepth = 512 })!, own, read);
            read.ExceptWith(own);
            Assert.Equal(string.Join(' ', read), string.Join(' ', SqlReferences.TablesRead(SqlText.Read(path))));
        });
    }

    private static void Collect(JsonNode? node, HashSet<string> own, SortedSet<string> read)
    {
        if (node is JsonObject entry)
        {
            if ((string?)entry["error_message"] is { } message)
            {
                Assert.Fail(message);
            }

            if (entry["type"] is JsonValue type && type.TryGetValue(out string? kind) && kind == "BASE_TABLE")
            {
                read.Add((string)entry["table_name"]!);
            }

            if (entry["cte_map"]?["map"] is JsonArray ctes)
            {
                own.UnionWith(ctes.Select(c => (string)c!["key"]!));
            }

            foreach ((_, JsonNode? child) in entry)
            {
                Collect(child, own, read);
            }
        }
        else if (node is JsonArray list)
        {
            foreach (JsonNode? child in list)
            {
                Collect(child, own, read);
            }
        }
    }
}
