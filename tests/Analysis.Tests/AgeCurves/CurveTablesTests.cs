using PartsSignal.Analysis.AgeCurves;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Tests.Fixtures;
using static PartsSignal.Analysis.Tests.AgeCurves.CurveStore;

namespace PartsSignal.Analysis.Tests.AgeCurves;

public sealed class CurveTablesTests
{
    [Fact]
    public void AgeCurves_RegisteredUnits_AreTheEstimatorsOnTheirSpans()
    {
        DateOnly installed = new(2020, 6, 1);
        int[] days = [200, 400, 400, 700, 900, 1100];
        using Database database = Open(
            [.. Enumerable.Range(0, 12).Select(i => Registered($"u{i:00}", installed))],
            [.. days.Select((d, i) => Call($"j{i}", $"u{i:00}", installed.AddDays(d), "drain_pump"))]);
        AgeCurveTables tables = AgeCurveTables.Create(database);
        int end = LastDay.DayNumber - installed.DayNumber;
        var ledger = AgeLedger.From([.. Enumerable.Range(0, 12).Select(i => new AgeSpan(0, (i < 6 ? days[i] : end) / 365.25, i < 6 ? 1 : 0))]);
        KaplanMeier curve = KaplanMeier.Estimate(ledger);
        AgeCurveSummary summary = tables.Summaries.Single(s => s.ModelFamily == "all");
        Assert.Equal((CurveBasis.Register, 12, 6, null), (summary.Basis, summary.Units, summary.Failures, summary.Condition));
        // the shape is that of the parts, by their own time in service
        ServiceEnd[] ends = [.. days.GroupBy(d => d).Select(g => new ServiceEnd(g.Key / 365.25, g.Count(), g.Count())),
            new ServiceEnd(end / 365.25, 6, 0), .. days.Select(d => new ServiceEnd((end - d) / 365.25, 1, 0))];
        Assert.Equal(PartLife.Shape([new PartService(ends)]).Value!.Value, summary.Shape!.Value, tolerance: 1e-3);
        Assert.All(tables.Points.Where(p => p.ModelFamily == "all"), p => Assert.Equal(1 - curve.SurvivalAt(p.AgeYears), p.ShareFailed!.Value, tolerance: 1e-9));
        Assert.Equal(0.5, tables.Points[^1].ShareFailed!.Value, tolerance: 1e-9);
    }

    [Fact]
    public void AgeCurves_OneFailure_IsRefusedWithTheReason()
    {
        DateOnly installed = new(2020, 6, 1);
        using Database database = Open(
            [.. Enumerable.Range(0, 8).Select(i => Registered($"u{i}", installed))],
            [Call("1", "u0", installed.AddDays(300), "timer")]);
        AgeCurveSummary summary = AgeCurveTables.Create(database).Summaries.First();
        Assert.Null(summary.Shape);
        Assert.Equal("fewer than 3 failures of parts that we saw put in use", summary.FitMissing);
        Assert.StartsWith("not reached", summary.MedianMissing, StringComparison.Ordinal);
    }

    [Fact]
    public void AgeCurves_LogAlone_SpeaksOfFailuresCalledTo_NotOfALife()
    {
        JobRow[] calls = [.. Enumerable.Range(0, 120).Select(i => Call($"j{i}", $"u{i}", FirstDay.AddDays(10 + i * 14), "drain_pump"))];
        UnitRow[] units = [.. calls.Select((c, i) => Made(c.UnitId!, c.OpenedOn.AddDays(-(300 + (i * 37 % 2500)))))];
        using Database database = Open(units, calls);
        AgeCurveTables tables = AgeCurveTables.Create(database);
        AgeCurveSummary all = tables.Summaries.Single(s => s.ModelFamily == "all");
        Assert.Equal((CurveBasis.LogOnly, 120), (all.Basis, all.Failures));
        Assert.StartsWith("of the failures we were called to up to", all.Condition, StringComparison.Ordinal);
        Assert.Null(all.MedianYears);
        Assert.All(tables.Summaries, s => Assert.NotNull(s.MedianMissing));
        Assert.Equal(1, tables.Points.Last(p => p.ModelFamily == "all").ShareFailed!.Value, tolerance: 1e-9);
    }

    [Fact]
    public void AgeCurves_LogAloneWithFewFailures_GivesTheReasonAndNoPoint()
    {
        using Database database = Open([Made("u", new DateOnly(2019, 1, 1))], [Call("1", "u", new DateOnly(2021, 1, 1), "timer")]);
        AgeCurveTables tables = AgeCurveTables.Create(database);
        Assert.Empty(tables.Points);
        Assert.All(tables.Summaries, s => Assert.StartsWith("fewer than", s.CurveMissing, StringComparison.Ordinal));
    }

    [Fact]
    public void NextYearRisk_ConstantRate_IsFoundWithinItsInterval()
    {
        // 200 appliances from new over almost five years, one timer failure in 20 of them, spread evenly.
        DateOnly installed = new(2020, 1, 2);
        using Database database = Open(
            [.. Enumerable.Range(0, 200).Select(i => Registered($"u{i}", installed))],
            [.. Enumerable.Range(0, 40).Select(i => Call($"j{i}", $"u{i * 5}", installed.AddDays(20 + i * 45), "timer"))]);
        NextYearRisk[] rows = [.. NextYearRiskTable.Create(database).Where(r => r.ModelFamily == "all" && r.AgeYears is >= 1 and <= 3)];
        Assert.All(rows, r => Assert.InRange(r.Chance!.Value, 0.03, 0.05));
        Assert.All(rows, r => Assert.InRange(1 - Math.Exp(-0.04), r.Lower!.Value, r.Upper!.Value));
        Assert.All(rows, r => Assert.Equal((CurveBasis.Register, 40), (r.Basis, r.Events)));
    }

    // Three valves in ten are first taken for the board, which is fitted for nothing; ten days later the valve is found.
    [Fact]
    public void NextYearRisk_WrongDiagnoses_AreNoFailuresOfWhatWasFittedForNothing()
    {
        const double Board = 0.03, Valve = 0.12;
        var random = new Random(17);
        DateOnly installed = FirstDay;
        var calls = new List<JobRow>();
        void Failures(string unit, string component, double perYear)
        {
            for (double day = Gap(random, perYear); installed.AddDays((int)day + 30) < LastDay; day += Gap(random, perYear))
            {
                bool isWrong = component == "inlet_valve" && random.NextDouble() < 0.3;
                if (isWrong)
                {
                    calls.Add(Call($"j{calls.Count}", unit, installed.AddDays((int)day), "control_board"));
                }

                calls.Add(Call($"j{calls.Count}", unit, installed.AddDays((int)day + (isWrong ? 10 : 0)), component));
            }
        }

        UnitRow[] units = [.. Enumerable.Range(0, 600).Select(i => Registered($"u{i}", installed))];
        foreach (UnitRow unit in units)
        {
            Failures(unit.UnitId, "control_board", Board);
            Failures(unit.UnitId, "inlet_valve", Valve);
        }

        using Database database = Open(units, [.. calls]);
        NextYearRisk[] rows = [.. NextYearRiskTable.Create(database).Where(r => r is { ModelFamily: "all", AgeYears: <= 3, Component: "control_board" })];
        double truth = 1 - Math.Exp(-Board);
        Assert.Equal(4, rows.Length);
        Assert.All(rows, r => Assert.InRange(truth, r.Lower!.Value, r.Upper!.Value));
        Assert.InRange(rows.Average(r => r.Chance!.Value), 0.75 * truth, 1.25 * truth);
    }

    [Fact]
    public void ReplacedPart_ThirtyAndNinetyDays_AreApart()
    {
        DateOnly day = new(2021, 1, 1);
        JobRow[] fitted = [.. Enumerable.Range(0, 20).Select(i => Call($"f{i}", $"u{i}", day, "drain_pump"))];
        JobRow[] again = [Call("a0", "u0", day.AddDays(10), "drain_pump"), Call("a1", "u1", day.AddDays(60), "drain_pump")];
        using Database database = Open(
            [.. fitted.Select(f => new UnitRow(f.UnitId!))], [.. fitted, .. again],
            [.. fitted.Select(f => new JobPartRow(f.JobId, 1, "P1", "drain_pump") { Supplier = "S1" })]);
        ReplacedPartPoint[] rows = [.. ReplacedPartPoint.Table(database).Where(r => r is { ApplianceType: "all", Supplier: "S1" })];
        Assert.Equal([0.05, 0.1], rows.Where(r => r.Days is 30 or 90).Select(r => Math.Round(r.ShareFailed!.Value, 12)));
        Assert.Equal(8, rows.Length);
    }

    [Fact]
    public void Tables_FutureDeleted_KeepWhatWasKnownThen()
    {
        DateOnly installed = new(2020, 6, 1);
        UnitRow[] units = [.. Enumerable.Range(0, 30).Select(i => Registered($"u{i:00}", installed))];
        JobRow[] calls = [.. Enumerable.Range(0, 20).Select(i => Call($"j{i}", $"u{i:00}", installed.AddDays(60 + i * 70), "drain_pump"))];
        DateOnly then = new(2022, 12, 31);
        using Database whole = Open(units, calls, asOf: then);
        using Database cut = Open(units, [.. calls.Where(c => c.OpenedOn <= then)], asOf: then);
        Assert.Equal(AgeCurveTables.Create(cut).Summaries, AgeCurveTables.Create(whole).Summaries);
        Assert.Equal(AgeCurveTables.Create(cut).Points, AgeCurveTables.Create(whole).Points);
        Assert.Equal(NextYearRiskTable.Create(cut), NextYearRiskTable.Create(whole));
    }

    private static double Gap(Random random, double perYear) => -Math.Log(1 - random.NextDouble()) / perYear * 365.25;

    private static UnitRow Made(string id, DateOnly day) => new(id) { MadeFrom = day, MadeTo = day };
}
