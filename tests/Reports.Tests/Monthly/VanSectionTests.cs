using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class VanSectionTests
{
    private const string Summary = """
        van_summary as
        select van, 1500.00::decimal(12, 2) as budget, 150.0::double as space, 1481.5::decimal(12, 2) as money_used, 61.0::double as space_used, 42 as parts, 50 as pieces, 800.4::double as jobs_per_year,
            0.64::double as completion, counted as completion_counted, if(counted is null, null, 4100)::decimal(12, 2) as money_counted, if(counted is null, null, 0.71)::double as completion_for_counted, booked as booked_jobs, 1.5::double as booked_finished, booked - 1 as waiting_jobs, 0.0008::double as bound_gap, answer
        from (values ('2', null::double, 0, 'no prices known'), ('1', 0.62::double, 3, 'planned')) as t(van, counted, booked, answer)
        """;

    private const string Plan = """
        van_plan as select '1' as van, 'PX-1' as part_number, 'drain pump' as description, 2 as target, null::decimal(12, 2) as price, 60.0::double as pieces_per_year, 40.5::double as jobs_per_year
        """;

    private const string Changes = """
        van_changes as
        select '1' as van, part_number, 'valve' as description, act as "action", 1 as quantity, null::varchar as label, null::varchar as other_van, until as "by"
        from (values ('PX-1', 'keep', null::varchar), ('PX-2', 'send_back', '1 June')) as t(part_number, act, until)
        """;

    private const string Evidence = """
        van_evidence as
        select quarter, 'all' as van, policy, jobs, 0.7::double as completion, 0.6::double as completion_lower, 0.8::double as completion_upper, 1481.5::decimal(12, 2) as money,
            if(policy = 'plan', 'poisson_greedy', null) as best_rule, 0.021::double as lead_best, 0.004::double as lead_best_lower, 0.038::double as lead_best_upper,
            55 as set_jobs, 0.05::double as set_lead, 0.01::double as set_lead_lower, 0.09::double as set_lead_upper
        from (values ('2024Q1', 'plan', 300), ('2023Q4', 'plan', 310), ('all', 'counted', 300), ('all', 'hindsight', 610), ('all', 'plan', 610)) as t(quarter, policy, jobs)
        """;

    private const string Curve = """
        van_curve as
        select '1' as van, budget::decimal(12, 2) as budget, budget / 3000 as plan_completion, budget / 4000 as best_rule_completion from range(0, 3000, 1000) as t(budget)
        """;

    [Fact]
    public void Read_NoPlan_IsNullAndSaysWhatItTakes()
    {
        using Database database = SectionCase.Session(Summary, Plan);
        Assert.Null(VanReader.Read(database, "EUR"));
        Assert.Contains("No van plan was made.", SectionCase.Text(VanSection.Build(null, "EUR")), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CountedVanAndOther_DescribeThemApart()
    {
        VanFacts facts = Filled();
        Assert.Equal([("1", true), ("2", false)], facts.Vans.Select(v => (v.Van, v.Counted)));
        string[] summaries = [.. facts.Vans.Select(v => v.Summary.Replace('\u00A0', ' '))];
        Assert.Equal(
            "42 parts, 50 pieces, for 1,482 EUR of 1,500 EUR and 61.0 of 150 space units. Of about 800 settled jobs a year, 64.0 % should be finished at the first visit; "
            + "no other load for this money can be expected to be more than 0.1 % better. What was counted aboard ties up 4,100 EUR and should finish 62.0 %; the best load for that money would finish 71.0 %. Of 3 calls not visited yet, about 2 should be finished at the first visit, with what is taken along for them. 2 open jobs are waiting for an ordered part. Set that part aside for the job; it is not in this load.",
            summaries[0]);
        Assert.EndsWith("Note: no prices known.", summaries[1], StringComparison.Ordinal);
        Assert.DoesNotContain("aboard", summaries[1], StringComparison.Ordinal);
    }

    // The replay finished 60 to 80 of a hundred.
    [Theory]
    [InlineData("0.64", "", false)]
    [InlineData("0.86", "Expect less: on the jobs that came after them, plans made this way finished 70.0 % (60.0–80.0).", true)]
    public void Read_ExpectationAboveTheReplay_IsPutRight(string completion, string expected, bool higher)
    {
        using Database database = SectionCase.Session(Summary.Replace("0.64", completion, StringComparison.Ordinal), Plan, Changes, Evidence, Curve);
        string summary = VanReader.Read(database, "EUR")!.Vans[0].Summary.Replace('\u00A0', ' ').Replace('\u2009', ' ').Replace('\u202F', ' ');
        Assert.Contains(expected, summary, StringComparison.Ordinal);
        Assert.Equal(higher, summary.Contains("Expect less", StringComparison.Ordinal));
    }

    // 800.4 jobs a year, 0.50 of them with 1,500 and 0.625 with 1,875: a hundred more.
    [Theory]
    [InlineData("budget / 3000", "Another 375.00 EUR for this van should finish about 100 more jobs a year at the first visit.")]
    [InlineData("0.5", "Another 375.00 EUR for this van would not finish one job more a year.")]
    public void Read_CurveOfTheVan_SaysWhatMoreMoneyBuys(string completion, string expected)
    {
        string curve = Curve.Replace("budget / 3000", completion, StringComparison.Ordinal).Replace("range(0, 3000, 1000)", "(values (1000), (1500), (1520), (1875), (3000))", StringComparison.Ordinal);
        using Database database = SectionCase.Session(Summary, Plan, Changes, Evidence, curve);
        Assert.Contains(expected, VanReader.Read(database, "EUR")!.Vans[0].Summary.Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.DoesNotContain("Another", Filled().Vans[0].Summary, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Evidence_ComparesWithTheBestSimpleRule() => Assert.Contains(
        "Of 100 jobs it finished 2.1 more (very likely between 0.4 and 3.8) than the best simple rule for the same money, parts most likely to be needed for their price first. "
        + "On jobs that needed two or more different parts it finished 5.0 in 100 more.",
        Filled().Replay, StringComparison.Ordinal);

    [Fact]
    public void Read_CountedVan_SaysWhatIsTiedUpNowAndThen() =>
        Assert.Equal("Van 1 ties up 4,100 EUR now (without parts set aside for waiting jobs), and 1,482 EUR with the plan.", Filled().Capital?.Replace('\u00A0', ' '));

    [Fact]
    public void Read_Lines_SayWhatToDoWithEachPart()
    {
        VanLine[] lines = [.. Filled().Vans[0].Lines];
        Assert.Equal([("send back 1 by 1 June", 1L, 0L), ("keep 1", 1L, 2L)], lines.Select(l => (l.Todo, l.OnHand, l.Target)));
        Assert.Null(lines[1].Price);
    }

    [Fact]
    public void Read_Replay_NamesItsQuartersAndPutsThePlanFirst()
    {
        VanFacts facts = Filled();
        Assert.Contains("in order of call, 2023Q4 to 2024Q1.", facts.Replay, StringComparison.Ordinal);
        Assert.Equal(["the plan", "best possible with hindsight"], facts.ReplayRows.Select(r => r.Way));
        Assert.Equal([3, 3], facts.Curves.Select(c => c.Points.Count));
    }

    // A log that names no van: nothing to try a plan on, and no table of nothing.
    [Fact]
    public void Read_ReplayWithoutJobs_IsNoReplay()
    {
        using Database database = SectionCase.Session(Summary, Plan, Changes, Evidence.Replace("610)", "0)", StringComparison.Ordinal), Curve);
        VanFacts facts = VanReader.Read(database, "EUR")!;
        Assert.Null(facts.Replay);
        Assert.Empty(facts.ReplayRows);
        Assert.Contains("The plan was not tried on later months.", SectionCase.Text(VanSection.Build(facts, "EUR")), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_MoneyThatIsNotSpent_SaysWhy()
    {
        using Database database = SectionCase.Session(Summary.Replace("1481.5::decimal", "753.4::decimal", StringComparison.Ordinal), Plan, Changes, Evidence, Curve);
        Assert.Contains("The rest of the money is not spent: one more part would cost more to carry than the second visits it saves.", VanReader.Read(database, "EUR")!.Vans[0].Summary, StringComparison.Ordinal);
        Assert.DoesNotContain("not spent", Filled().Vans[0].Summary, StringComparison.Ordinal);
    }

    // The technician looks for the number that is on the piece.
    [Fact]
    public void Read_PieceUnderAnOldNumber_NamesIt()
    {
        using Database database = SectionCase.Session(Summary, Plan, Changes.Replace("'send_back', '1 June'", "'take_off', null", StringComparison.Ordinal).Replace("null::varchar as label", "'PX-0' as label", StringComparison.Ordinal), Evidence, Curve);
        Assert.Contains("take off 1 of PX-0", VanReader.Read(database, "EUR")!.Vans[0].Lines.Select(l => l.Todo));
    }

    [Fact]
    public void Build_NothingReplayedOrCounted_SaysBoth()
    {
        string text = SectionCase.Text(VanSection.Build(new VanFacts([new VanPlanView("1", "empty", false, [])], null, [], [], "", null), "EUR"));
        Assert.Contains("The plan was not tried on later months", text, StringComparison.Ordinal);
        Assert.Contains("No van has been counted, so each plan lists the whole load", text, StringComparison.Ordinal);
        Assert.Contains("Nothing is worth carrying within the money and space given.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_RefusedPlan_SaysWhyAndListsNothing()
    {
        string text = SectionCase.Text(VanSection.Build(new VanFacts([new VanPlanView("1", "No plan: by this log, 100 in 100 jobs need no part.", false, [])], null, [], [], "", null), "EUR"));
        Assert.Contains("No plan: by this log", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Nothing is worth carrying", text, StringComparison.Ordinal);
    }

    private static VanFacts Filled()
    {
        using Database database = SectionCase.Session(Summary, Plan, Changes, Evidence, Curve);
        return VanReader.Read(database, "EUR")!;
    }
}
