using CsCheck;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;

namespace PartsSignal.Analysis.Tests.CrossReference;

public sealed class SupersessionGraphTests
{
    private static readonly Gen<SupersessionArrow[]> AnyArrows = Gen.Select(
        Gen.Int[0, 7], Gen.Int[0, 7], Gen.Enum<SupersessionKind>(), Gen.Int[1, 3],
        (a, b, k, q) => new SupersessionArrow($"N{a}", $"N{b}", k, q)).Array[0, 10].Select(all => all.DistinctBy(a => (a.Old, a.New)).ToArray());

    [Fact]
    public void Resolve_ReferenceGraph_MatchesReference() => Reference(arrows =>
    {
        var graph = new SupersessionGraph(arrows);
        return (n => [.. graph.Resolve(n).Replacements.Select(r => r.Number)],
            [.. arrows.SelectMany(a => new[] { a.Old, a.New }).Distinct().Where(n => graph.Resolve(n).InCycle).Order(StringComparer.Ordinal)
                .GroupBy(n => n[0]).Select(g => (IReadOnlyList<string>)[.. g])]);
    });

    [Fact]
    public void CurrentNumbers_ReferenceGraph_MatchesReference() => Reference(arrows =>
    {
        List<(string Old, string Current, int Quantity, string Via)> rows = InSql(arrows);
        return (
            n => rows.Exists(r => r.Old == n) ? [.. rows.Where(r => r.Old == n).Select(r => r.Current).Order(StringComparer.Ordinal)] : [n],
            [.. rows.Where(r => r.Via == "cycle").GroupBy(r => r.Old[0]).Select(g => (IReadOnlyList<string>)[.. g.Select(r => r.Old)])]);
    });

    [Fact]
    public void CurrentNumbers_AnyGraph_AgreesWithTarjan() => AgreesWithTarjan(8);

    [LongFact]
    public void CurrentNumbers_ManyGraphs_AgreesWithTarjan() => AgreesWithTarjan(30);

    private static void AgreesWithTarjan(int runs) => AnyArrows.ForAll(
        arrows =>
        {
            var graph = new SupersessionGraph(arrows);
            var rows = InSql(arrows).ToLookup(r => r.Old);
            foreach (string old in arrows.Select(a => a.Old).Distinct())
            {
                Resolution wanted = graph.Resolve(old);
                Assert.Equal(wanted.Replacements.Select(r => r.Number), rows[old].Select(r => r.Current).Order(StringComparer.Ordinal));
                Assert.Equal(wanted.InCycle, rows[old].Any(r => r.Via == "cycle"));
                foreach (Replacement sure in wanted.Replacements.Where(r => r.Via != SupersessionKind.Alternative))
                {
                    Assert.Equal(sure.Quantity, rows[old].Single(r => r.Current == sure.Number).Quantity);
                }
            }
        },
        runs);

    [Fact]
    public void Resolve_LongChain_EndsAtItsLastNumber()
    {
        SupersessionArrow[] arrows = [.. Enumerable.Range(0, 5000).Select(i => new SupersessionArrow($"N{i:0000}", $"N{i + 1:0000}"))];
        var graph = new SupersessionGraph(arrows);
        List<(string Old, string Current, int Quantity, string Via)> rows = InSql(arrows);
        Assert.Equal(5000, rows.Count);
        Assert.All(rows, r => Assert.Equal("N5000", r.Current));
        Assert.All(arrows, a => Assert.Equal("N5000", graph.Resolve(a.Old).Replacements.Single().Number));
    }

    [Fact]
    public void Resolve_AsOf_UsesOnlyArrowsKnownThen()
    {
        SupersessionArrow[] arrows = [new("A", "B", EffectiveOn: new(2024, 1, 1)), new("B", "C", EffectiveOn: new(2024, 6, 1)), new("C", "A", EffectiveOn: new(2025, 1, 1))];
        foreach ((DateOnly? day, string expected) in new (DateOnly?, string)[] { (new(2023, 12, 31), "A"), (new(2024, 3, 31), "B"), (new(2024, 6, 1), "C"), (null, "A") })
        {
            Assert.Equal(expected, new SupersessionGraph(arrows, day).Resolve("A").Replacements.Single().Number);
            Assert.Equal(expected, InSql(arrows, day).Where(r => r.Old == "A").Select(r => r.Current).DefaultIfEmpty("A").Single());
        }
    }

    [Fact]
    public void Resolve_KitBehindAKit_MultipliesQuantities()
    {
        SupersessionArrow[] arrows =
        [
            new("K", "P", SupersessionKind.KitPart, 2), new("K", "Q", SupersessionKind.KitPart), new("P", "S", SupersessionKind.KitPart, 3), new("Q", "S"),
        ];
        Assert.Equal(new Replacement("S", 7, SupersessionKind.KitPart), new SupersessionGraph(arrows).Resolve("K").Replacements.Single());
        Assert.Equal(("K", "S", 7, "kit_part"), InSql(arrows).First());
    }

    private static void Reference(Func<IReadOnlyList<SupersessionArrow>, (Func<string, string[]> Resolve, IReadOnlyList<IReadOnlyList<string>> Cycles)> solve)
    {
        Oracle oracle = Oracle.Named("supersession_graph");
        SupersessionArrow[] arrows = [.. oracle.Inputs["edges"]!.AsArray().Select(e => new SupersessionArrow((string)e![0]!, (string)e[1]!))];
        (Func<string, string[]> resolve, IReadOnlyList<IReadOnlyList<string>> cycles) = solve(arrows);
        Assert.All(oracle.Expected["resolved"]!.AsObject(), r => Assert.Equal(r.Value!.AsArray().Select(v => (string)v!), resolve(r.Key)));
        Assert.Equal(oracle.Expected["cycles"]!.AsArray().Select(c => string.Join(' ', c!.AsArray().Select(v => (string)v!))), cycles.Select(c => string.Join(' ', c)));
        Assert.All(cycles.SelectMany(c => c), m => Assert.Equal([m], resolve(m)));
    }

    private static List<(string Old, string Current, int Quantity, string Via)> InSql(IReadOnlyList<SupersessionArrow> arrows, DateOnly? asOf = null)
    {
        using var database = Database.Open(new DatabaseOptions { Threads = 1 });
        StoreTables.CreateEmpty(database, "supersessions");
        ResultTable.Write(database, "arrows", arrows.Select((a, i) => new Row(a.Old, a.New, a.EffectiveOn, a.Kind, a.Quantity, "list.csv", i + 2)));
        database.Execute("insert into supersessions by name from arrows");
        database.Execute("set variable arrows_as_of = $day", ("day", asOf));
        return [.. database.Read("intermediate/int_current_numbers.sql", r => (r.GetString(0), r.GetString(1), r.Int(2), r.GetString(3)))];
    }

    private sealed record Row(string OldNumber, string NewNumber, DateOnly? EffectiveOn, SupersessionKind Kind, int Quantity, string SourceFile, int SourceLine);
}
