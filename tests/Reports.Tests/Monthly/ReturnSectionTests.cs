using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class ReturnSectionTests
{
    private const string Shares = """
        callback_shares as
        select 30 as days, g as "grouping", member, repairs, callbacks, callbacks / repairs as share, lower, 0.2::double as upper, null::varchar as missing, still as not_followed, member = 'control_board' as stands_out
        from (values
            ('all', 'all', 1000, 40, 0.03::double, 0), ('month', '2024-04-01', 100, 4, 0.01, 0), ('month', '2024-05-01', 100, 6, 0.02, 12), ('month', '2024-06-01', 10, 1, 0.0, 90),
            ('component', 'control_board', 210, 17, 0.051, 0), ('component', 'door_seal', 5, 2, 0.1, 0), ('component', 'drain_pump', 330, 11, 0.019, 0)
        ) as t(g, member, repairs, callbacks, lower, still)
        union all
        select 60, 'all', 'all', 1000, 80, 0.08, 0.06, 0.1, null, 0, false
        """;

    private const string Callbacks = """
        callbacks as
        select 'J2' as job_id, date '2024-05-09' as opened_on, 'J1' as earlier_job_id, 12 as days_after, 'drain_pump' as earlier_component, null::varchar as component
        """;

    [Fact]
    public void Read_NotComputed_IsNullAndSaidSo()
    {
        using Database database = SectionCase.Session();
        Assert.Null(ReturnSection.Read(database, SectionCase.Options));
        Assert.Contains("no unit can be followed from one job to the next", SectionCase.Text(ReturnSection.Build(null, "EUR")), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WindowOfTheShop_LeavesOtherWindowsAndLaterMonthsOut()
    {
        using Database database = SectionCase.Session(Shares, Callbacks);
        ReturnFacts facts = ReturnSection.Read(database, SectionCase.Options)!;
        Assert.Equal([4, 5], facts.Months.Select(m => m.Month.Month));
        Assert.Equal(12, facts.Months[1].StillWatched);
        Assert.StartsWith("Over all months 4.0\u00A0% came back.", facts.Note, StringComparison.Ordinal);
        Assert.Equal(10 * 85m, facts.Cost);
        Assert.Contains("At your price of a second visit, the returns of the last twelve months cost 850.00 EUR.", SectionCase.Text(ReturnSection.Build(facts, "EUR")), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_PriceThatTheShopNeverGave_IsCalledAnAssumption()
    {
        using Database database = SectionCase.Session(Shares, Callbacks);
        string text = SectionCase.Text(ReturnSection.Build(ReturnSection.Read(database, SectionCase.Options with { SecondVisitCostAssumed = true }), "EUR"));
        Assert.Contains("If a second visit costs 85.00 EUR, the returns of the last twelve months cost 850.00 EUR. That price is this program's assumption: give yours in the settings.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("your price", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_NothingCameBack_SaysNothingOfMoney()
    {
        var facts = new ReturnFacts(30, [new ReturnMonth(SectionCase.Month, 20, 0, Estimate.From(0, 0, 0.16))], [], [], 0m, "");
        Section section = ReturnSection.Build(facts, "EUR");
        Assert.DoesNotContain("EUR", SectionCase.Text(section), StringComparison.Ordinal);
        Assert.DoesNotContain("not over yet", SectionCase.Text(section), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Component_StandsOutWhereTheTableSaysSo()
    {
        using Database database = SectionCase.Session(Shares, Callbacks);
        Assert.Equal(["control_board"], ReturnSection.Read(database, SectionCase.Options)!.Components.Where(c => c.StandsOut).Select(c => c.Name));
    }

    [Fact]
    public void Build_ReturnOfUnknownCause_SaysNotKnown()
    {
        using Database database = SectionCase.Session(Shares, Callbacks);
        database.Execute("insert into jobs (job_id, complaint_text) values ('J2', 'still wont drain')");
        Assert.Equal(
            ["J2", new DateOnly(2024, 5, 9), "J1", 12, "still wont drain", "drain pump", "not known"],
            SectionCase.Table(ReturnSection.Build(ReturnSection.Read(database, SectionCase.Options), "EUR"), "return-jobs").Rows[0]);
    }

    [Fact]
    public void Build_NoReturnInTheMonth_SaysSo()
    {
        using Database database = SectionCase.Session(Shares, Callbacks + " where false");
        Assert.Contains("No job of this month followed another", SectionCase.Text(ReturnSection.Build(ReturnSection.Read(database, SectionCase.Options), "EUR")), StringComparison.Ordinal);
    }
}
