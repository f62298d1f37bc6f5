using System.Text.Json.Nodes;
using PartsSignal.Analysis.VanPlan.Loads;

namespace PartsSignal.Analysis.Tests.VanPlan.Loads;

/// <summary>A reference repair-kit problem as a kit problem, and its kits by letter.</summary>
internal sealed record RepairKitCase(Oracle Oracle, string[] Names, LoadProblem Problem)
{
    public static RepairKitCase Named(string name)
    {
        Oracle oracle = Oracle.Named(name);
        JsonNode inputs = oracle.Inputs;
        string[] names = [.. inputs["parts"]!.AsArray().Select(n => (string)n!)];
        int[] cost = Oracle.Wholes(inputs["cost"]);
        double[]? space = inputs["space"] is { } s ? Oracle.Numbers(s) : null;
        int most = (int?)inputs["max_units"] ?? 1;
        LoadPart[] parts = [.. names.Select((n, i) => new LoadPart(n, cost[i] * 100, space?[i] ?? 0, most))];
        LoadJob[] jobs = [.. inputs["jobs"]!.AsArray().Select(j => new LoadJob(
            (double)j!["weight"]!, [.. j["parts"]!.AsArray().Select(p => new PartNeed(Array.IndexOf(names, (string)p!), 1))]))];
        var limits = new LoadLimits((long)inputs["budget"]! * 100, (double?)inputs["space_limit"] ?? double.PositiveInfinity);
        return new RepairKitCase(oracle, names, LoadProblemBuilder.Build(parts, jobs, limits));
    }

    public int[] Kit(string key) => [.. Names.Select(n => Oracle.Expected[key]!.AsArray().Any(e => (string)e! == n) ? 1 : 0)];
}
