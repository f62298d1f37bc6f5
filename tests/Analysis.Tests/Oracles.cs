using System.Text.Json.Nodes;

namespace PartsSignal.Analysis.Tests;

/// <summary>The reference values in TestData/oracles.json.</summary>
internal sealed record Oracle(string Name, JsonNode Inputs, JsonNode Expected, double Tolerance)
{
    private static readonly JsonArray All = JsonNode.Parse(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "TestData", "oracles.json")))!.AsArray();

    /// <summary>The case of that name.</summary>
    public static Oracle Named(string name)
    {
        JsonNode found = All.Single(c => (string?)c!["name"] == name)!;
        return new Oracle(name, found["inputs"]!, found["expected"]!, (double?)found["tolerance"] ?? 0);
    }

    /// <summary>Fails unless |actual - expected| &lt;= tolerance * max(1, |expected|); a null expects null.</summary>
    public void Close(JsonNode? expected, double? actual)
    {
        if (expected is null)
        {
            Assert.Null(actual);
            return;
        }

        double e = expected.GetValue<double>();
        Assert.True(actual is not null, $"{Name}: expected {e:R}, got nothing");
        double allowed = Tolerance * Math.Max(1, Math.Abs(e));
        Assert.True(Math.Abs(actual!.Value - e) <= allowed, $"{Name}: expected {e:R} within {allowed:R}, got {actual:R}");
    }

    /// <summary>The same for a list, in order.</summary>
    public void Close(JsonNode? expected, IReadOnlyList<double> actual)
    {
        JsonArray list = expected!.AsArray();
        Assert.Equal(list.Count, actual.Count);
        for (int i = 0; i < list.Count; i++)
        {
            Close(list[i], actual[i]);
        }
    }

    /// <summary>A list of numbers.</summary>
    public static double[] Numbers(JsonNode? node) => [.. node!.AsArray().Select(n => n!.GetValue<double>())];

    /// <summary>A list of whole numbers.</summary>
    public static int[] Wholes(JsonNode? node) => [.. node!.AsArray().Select(n => n!.GetValue<int>())];
}
