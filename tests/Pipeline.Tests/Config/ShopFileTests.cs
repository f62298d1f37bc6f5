using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Tests.Config;

public sealed class ShopFileTests
{
    [Fact]
    public void Parse_Empty_Defaults()
    {
        ShopSettings settings = ShopFile.Parse("{}");
        Assert.Equal(new ShopSettings().SecondVisitCost, settings.SecondVisitCost);
        Assert.Empty(settings.Sources);
    }

    [Fact]
    public void Parse_ManyFaults_AllReportedWithTheirPaths()
    {
        BadInputException bad = Assert.Throws<BadInputException>(() => ShopFile.Parse(
            """
            {
              "dateOrder": "dym",
              "serviceTarget": 90,
              "callbackDay": 14,
              "asOf": "31.12.2026",
              "vans": [{ "budget": 1 }],
              "limits": { "maxRowBytes": 1.5 },
              "sources": [
                { "files": "../secret.csv", "kind": "job" },
                { "files": "a.csv", "kind": "jobs", "columns": { "job": "Job", "opened_on": 3 }, "encoding": "utf-99" }
              ]
            }
            """));
        string[] paths = ["dateOrder", "serviceTarget", "callbackDay", "asOf", "vans[0].van", "limits.maxRowBytes", "sources[0].files", "sources[0].kind", "sources[1].columns.job", "sources[1].columns.opened_on", "sources[1].encoding"];
        Assert.All(paths, p => Assert.Contains(bad.Faults, f => f.StartsWith($"shop.json: {p}:", StringComparison.Ordinal)));
        Assert.Contains("Did you mean 'callbackDays'?", bad.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_NoJson_NamesTheLine()
    {
        BadInputException bad = Assert.Throws<BadInputException>(() => ShopFile.Parse("{\n \"shop\": \n}"));
        Assert.Contains("line 3", bad.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void With_MapForAFileAlreadyThere_TakesItsPlaceOnlyWhereItIsMadeAnew()
    {
        string text = """{ "shop": "Ours", "sources": [ { "files": "a.csv", "kind": "parts" }, { "files": "b.csv", "kind": "jobs" } ] }""";
        SourceMap[] maps = [new SourceMap { Files = "b.csv", Kind = "job_parts", Columns = new Dictionary<string, IReadOnlyList<string>> { ["part"] = ["Part", "Suffix"] } }];
        Assert.Equal(["parts", "jobs"], ShopFile.Parse(ShopFileWriter.With(text, maps)).Sources.Select(s => s.Kind));
        ShopSettings settings = ShopFile.Parse(ShopFileWriter.With(text, maps, anew: _ => true));
        Assert.Equal("Ours", settings.Shop);
        Assert.Equal(["a.csv/parts", "b.csv/job_parts"], settings.Sources.Select(s => $"{s.Files}/{s.Kind}"));
        Assert.Equal(["Part", "Suffix"], settings.Sources[1].Columns["part"]);
    }

    [Fact]
    public void Schema_KeysOfTheFile_AreThoseTheReaderKnows()
    {
        JsonNode schema = ShopSchema.Build();
        Assert.Equal(Names(typeof(ShopSettings)), Keys(schema["properties"]!));
        JsonNode source = schema["properties"]!["sources"]!["items"]!;
        Assert.Equal(Names(typeof(SourceMap)), Keys(source["properties"]!));
        Assert.Equal(Names(typeof(ReadingLimits)), Keys(schema["properties"]!["limits"]!["properties"]!));
        Assert.Equal(FieldCatalog.Kinds, source["properties"]!["kind"]!["enum"]!.AsArray().Select(k => k!.GetValue<string>()));
        Assert.All(source["allOf"]!.AsArray(), rule => Assert.Equal(
            FieldCatalog.Names(rule!["if"]!["properties"]!["kind"]!["const"]!.GetValue<string>()),
            rule["then"]!["properties"]!["columns"]!["propertyNames"]!["enum"]!.AsArray().Select(f => f!.GetValue<string>())));
    }

    private static IEnumerable<string> Keys(JsonNode node) => node.AsObject().Select(p => p.Key).Where(k => k != "$schema").Order(StringComparer.Ordinal);

    private static IEnumerable<string> Names(Type type) => type.GetProperties().Select(p => char.ToLowerInvariant(p.Name[0]) + p.Name[1..]).Order(StringComparer.Ordinal);
}
