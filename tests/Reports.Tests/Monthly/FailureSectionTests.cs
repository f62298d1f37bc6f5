using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class FailureSectionTests
{
    private const string Needs = """
        month_needs as
        select month, need, calls, 310 as cause_known, calls / 310 as share, 0.08::double as lower, 0.15::double as upper
        from (values (date '2024-05-01', 'none', 90), (date '2024-05-01', 'drain_pump', 34), (date '2024-05-01', 'inlet_valve', 30), (date '2023-05-01', 'drain_pump', 31)) as t(month, need, calls)
        """;

    private const string Families = """
        month_families as
        select date '2024-05-01' as month, 'K41' as model_family, 'washer' as appliance_type, 'Ostrava Blue' as brand, 52 as calls,
            0.126::double as share, 0.098::double as lower, 0.162::double as upper, null::varchar as top_component
        """;

    private const string Comparison = """
        family_comparison as
        select 'K41' as model_family, 'inlet_valve' as subject, 'component' as subject_kind, 'share_of_calls' as basis, 2.6::double as ratio, true as stands_out
        """;

    private const string Rates = """
        failure_rates as
        select 'washer' as appliance_type, 'drain_pump' as subject, 'component' as subject_kind, 'register_unit_years' as basis, 'age' as "grouping", age_band, events,
            920.0::double as exposure, estimate, estimate as lower, estimate as upper, missing
        from (values ('2-4', 5, 1.2::double, null), ('0-2', 1, null, 'too few')) as t(age_band, events, estimate, missing)
        """;

    [Fact]
    public void Read_NothingCounted_IsNullAndSaidSo()
    {
        using Database database = SectionCase.Session();
        Assert.Null(FailureSection.Read(database, SectionCase.Month));
        Assert.Contains("nothing can be ranked", SectionCase.Text(FailureSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ComponentNewThisMonth_HadNoShareAYearAgoButNoneIsKnownForTheMonthBefore()
    {
        using Database database = SectionCase.Session(Needs, Families, Comparison);
        FailureFacts facts = FailureSection.Read(database, SectionCase.Month)!;
        Assert.Equal(["drain_pump", "inlet_valve"], facts.Components.Select(c => c.Need));
        Assert.Equal(0, facts.Components[1].ShareYearAgo);
        Assert.Null(facts.Components[1].ShareBefore);
        Assert.Equal("inlet valve 2.6 times", Assert.Single(facts.Families).StandsOut);
    }

    [Fact]
    public void Build_NoRegister_SaysWhyThereAreNoRates()
    {
        using Database database = SectionCase.Session(Needs, Families);
        Section section = FailureSection.Build(FailureSection.Read(database, SectionCase.Month));
        Assert.Contains("They need a register: a list of machines", SectionCase.Text(section), StringComparison.Ordinal);
        Assert.Null(SectionCase.Table(section, "families").Rows[0][5]);
    }

    [Fact]
    public void Build_RatesOnTheRegister_NameNoPeakOfOneBandAndKeepTheReasonOfTheOther()
    {
        using Database database = SectionCase.Session(Needs, Families, Rates);
        FailureFacts facts = FailureSection.Read(database, SectionCase.Month)!;
        Assert.Equal([Estimate.None("too few"), Estimate.From(1.2, 1.2, 1.2)], Assert.Single(facts.Rates).Bands.Select(b => b.Rate));
        string text = SectionCase.Text(FailureSection.Build(facts));
        Assert.Contains("No age stands out: the differences between the bars may be chance.", text, StringComparison.Ordinal);
        Assert.Contains("6 failures in 1,840 machine-years on the register", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FailuresThatMayBeOnListedMachines_SayHowTheyAreCounted()
    {
        using Database database = SectionCase.Session(Needs, Families, Rates, "register_untold as select 'washer' as appliance_type, 'drain_pump' as component, 6 as listed, 3 as untold, 2.25::double as expected");
        Assert.Contains("3 more failures may be on these machines", FailureSection.Read(database, SectionCase.Month)!.Rates[0].Basis, StringComparison.Ordinal);
        Assert.Contains("count 2.3 of them, the number to be expected; the ranges run from none of them to all of them", FailureSection.Read(database, SectionCase.Month)!.Rates[0].Basis, StringComparison.Ordinal);
    }

    // 3 causes in the month, 12 in the eleven months before, 20 in the twelve before those.
    [Fact]
    public void Read_MonthWithFewCauses_ShowsTwelveMonths()
    {
        using Database database = SectionCase.Session("""
            month_needs as
            select month, need, calls, 3 as cause_known, 0.0::double as share, 0.0::double as lower, 0.0::double as upper
            from (values (date '2024-05-01', 'drain_pump', 2), (date '2024-05-01', 'none', 1), (date '2023-06-01', 'drain_pump', 4), (date '2023-09-01', 'inlet_valve', 8), (date '2023-05-01', 'inlet_valve', 20)) as t(month, need, calls)
            """, Families);
        FailureFacts facts = FailureSection.Read(database, SectionCase.Month)!;
        Assert.Equal([("inlet_valve", 8L, 15L, (double?)1), ("drain_pump", 6L, 15L, 0)], facts.Components.Select(c => (c.Need, c.Calls, c.CauseKnown, c.ShareYearAgo)));
        Section section = FailureSection.Build(facts);
        Assert.Contains("so the last twelve months are shown", SectionCase.Text(section), StringComparison.Ordinal);
        Assert.Equal("Calls of June 2023 to May 2024; 15 calls with a known cause.", SectionCase.Table(section, "components").Basis);
    }

    [Fact]
    public void Build_HandfulOfCauses_DrawsNoChart()
    {
        var facts = new FailureFacts([new ComponentShare("door_seal", 3, 3, Estimate.From(1, 0.4, 1), null, null)], [], [], "Calls of May 2024", new RegisterMachines(0, 0, "none", "unknown"));
        string text = SectionCase.Text(FailureSection.Build(facts));
        Assert.Contains("door seal", text, StringComparison.Ordinal);
        Assert.DoesNotContain("leads with", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_PartsThatShareTheTopCount_NamesNoLeader()
    {
        ComponentShare Of(string need) => new(need, 6, 15, Estimate.From(0.4, 0.2, 0.6), null, null);
        var facts = new FailureFacts([Of("door_seal"), Of("drain_pump")], [], [], "Calls of May 2024", new RegisterMachines(0, 0, "none", "unknown"));
        Assert.Contains("No part leads: 2 parts were at fault in 6 calls each.", SectionCase.Text(FailureSection.Build(facts)), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_MixedRegister_SaysWhatToDo()
    {
        var facts = new FailureFacts([], [new FamilyShare("K41", "washer", "Ostrava Blue", 5, Estimate.From(1, 0.5, 1), null)], [new BandSeries("pump", "", [])], "Calls of May 2024", new RegisterMachines(34, 0, "mixed", "household"));
        Assert.Contains("To see them, keep a list with one kind of machine only.", SectionCase.Text(FailureSection.Build(facts)), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_TooFewCalls_DoesNotRank()
    {
        var facts = new FailureFacts([new ComponentShare("door_seal", 1, 12, Estimate.None("too few"), null, null)], [], [], "Calls of May 2024", new RegisterMachines(0, 0, "none", "unknown"));
        Assert.Contains("Too few calls to rank parts.", SectionCase.Text(FailureSection.Build(facts)), StringComparison.Ordinal);
    }
}
