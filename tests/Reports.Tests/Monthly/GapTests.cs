using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

/// <summary>What to fill in first, worked by hand on small logs.</summary>
public sealed class GapTests
{
    // A whole job: it counts for every answer.
    private const string Whole =
        "'J' || i as job_id, date '2024-03-01' as opened_on, date '2024-03-04' as closed_on, 'closing day' as closing_basis, 'fixed_with_part' as outcome, 'drain_pump' as main_component, 'washer' as appliance_type, 'F1' as model_family, 'M1' as model_number, 'U' || i as unit_id, 'C' || i as customer_id, 4.5 as age_years, 'no_drain' as complaint_kind, 'V1' as van, 'named' as van_basis, 'Ann' as technician, true as first_visit_done, null::varchar as visit_reason";

    [Fact]
    public void Read_WholeJobs_NothingIsMissing() => Assert.Empty(Gaps("i as i"));

    // Ten jobs. Four that say how they ended carry no closing day: each is lost to odds, curves, plan, callbacks and first
    // visits, five answers, 20 in all. Six carry no serial: lost to curves and callbacks, 12 in all.
    [Fact]
    public void Read_ClosingDaysAndSerials_ClosingDaysComeFirst()
    {
        IReadOnlyList<Gap> gaps = Gaps("case when i >= 4 then closed_on end as closed_on, case when i < 4 then 'open' else closing_basis end as closing_basis, case when i < 4 then unit_id end as unit_id");
        Assert.Equal(["the closing day", "which appliance it was"], gaps.Select(g => g.What));
        Assert.Equal((4L, 10L, 4L), (gaps[0].Jobs, gaps[0].Of, gaps[0].BroughtBack));
        Assert.Equal("4 for odds, 4 for age curves, 4 for the van plan, 4 for callbacks, 4 for first visits", gaps[0].Answers);
        Assert.Equal("6 for age curves, 6 for callbacks", gaps[1].Answers);
        Assert.Equal(
            "Fill in first: the closing day. With that filled in, 4 of 10 jobs would count in more of your figures (4 for odds, 4 for age curves, 4 for the van plan, 4 for callbacks, 4 for first visits). These jobs say how they ended. Write down the day they were finished.",
            Gap.First(gaps));
    }

    // Two without a closing day lose 10 answers, the eight without a serial 16.
    [Fact]
    public void Read_FewClosingDaysAndManySerials_SerialsComeFirst() => Assert.Equal(
        ["which appliance it was", "the closing day"],
        Gaps("case when i >= 2 then closed_on end as closed_on, case when i < 2 then 'open' else closing_basis end as closing_basis, case when i < 2 then unit_id end as unit_id").Select(g => g.What));

    // Two things at once: five jobs lack unit and age, and neither alone gives an age curve. The unit alone gives callbacks,
    // the age alone the rates by age. Of the other five, three lack the age.
    [Fact]
    public void Read_JobsThatLackTwoThings_AreBroughtBackByNeitherAlone()
    {
        IReadOnlyList<Gap> gaps = Gaps("case when i >= 5 then unit_id end as unit_id, case when i >= 8 then age_years end as age_years");
        Assert.Equal(["the age of the appliance", "which appliance it was"], gaps.Select(g => g.What));
        Assert.Equal((8L, "8 for rates by age, 3 for age curves"), (gaps[0].BroughtBack, gaps[0].Answers));
        Assert.Equal((5L, "5 for callbacks"), (gaps[1].BroughtBack, gaps[1].Answers));
        Assert.StartsWith("Fill in first: which appliance it was. With that filled in, 5 of 10 jobs would also count for callbacks. ", Gap.First([gaps[1]]), StringComparison.Ordinal);
    }

    // Still open: nothing is lost yet. Declined: no part was to be named.
    [Fact]
    public void Read_OpenAndDeclinedJobs_LackNoOutcome() => Assert.Empty(Gaps(
        "case when i < 3 then null else closed_on end as closed_on, case when i < 3 then 'open' else closing_basis end as closing_basis, case when i < 3 then 'unknown' when i < 6 then 'declined' else outcome end as outcome, case when i >= 6 then main_component end as main_component"));

    [Fact]
    public void Read_VisitsThatAreNoFailures_AreNotCounted() =>
        Assert.Equal(4, Gaps("case when i < 6 then 'inspection' end as visit_reason, null::double as age_years")[0].Of);

    // The advice names only what the log does not have.
    [Theory]
    [InlineData("'unknown' as outcome, null::varchar as main_component", "how the job ended", "You already record the closing day.")]
    [InlineData("'unknown' as outcome, null::varchar as main_component, null::date as closed_on, 'unknown' as closing_basis", "how the job ended", "Write down the outcome, or the part fitted and the closing day.")]
    [InlineData("'fixed' as outcome, null::varchar as main_component", "the part fitted", "Write down which part was fitted")]
    [InlineData("null::double as age_years", "the age of the appliance", "You already record which appliance it was. Give its build or purchase date in a register")]
    [InlineData("null::double as age_years, null::varchar as unit_id", "the age of the appliance", "Write down the serial number or the year of purchase.")]
    [InlineData("null::varchar as unit_id", "which appliance it was", "You already record the customer.")]
    [InlineData("null::varchar as unit_id, null::varchar as customer_id", "which appliance it was", "Write down the serial number, or the customer and the model.")]
    [InlineData("null::varchar as model_family", "the model family", "Add these models to the model list")]
    [InlineData("null::varchar as model_family, null::varchar as model_number", "the model family", "Write down the model number.")]
    [InlineData("null::varchar as van, null::varchar as van_basis", "the van", "You already record the technician.")]
    [InlineData("'other' as complaint_kind", "a complaint that can be recognized", "Answer the open questions about complaints")]
    [InlineData("null::boolean as first_visit_done", "the number of visits", "Write down how many visits")]
    public void Read_OneThingMissing_AdvisesWhatTheLogDoesNotHave(string changed, string what, string advice)
    {
        Gap gap = Gaps(changed)[0];
        Assert.Equal((what, 10L, 10L), (gap.What, gap.Jobs, gap.BroughtBack));
        Assert.StartsWith(advice, gap.Fix, StringComparison.Ordinal);
    }

    // Four lines: one with a component but an unknown number is lost to the plan only, one without either to the rest, too.
    [Fact]
    public void Read_PartNumbersUnknown_CostThePlanOrAllAnswers()
    {
        IReadOnlyList<Gap> gaps = Gaps(
            "case when i = 1 then 'other_part' else main_component end as main_component",
            "'J' || i as job_id, case when i >= 2 then 'PX-1' end as part_number from range(4) as r(i)", "10.0");
        Assert.Equal(["a part that can be recognized", "a part number that is in the catalog"], gaps.Select(g => g.What));
        Assert.Equal("1 for failure rates, 1 for model families, 1 for odds, 1 for rates by age, 1 for age curves, 1 for the van plan", gaps[0].Answers);
        Assert.Equal("1 for the van plan", gaps[1].Answers);
    }

    // Words stand for numbers where the shop writes none: the plan counts such jobs as soon as prices are known.
    [Theory]
    [InlineData("'J' || i as job_id, 1 as line, 'drain_pump' as component from range(10) as r(i)", "null", "what the parts cost", "Add a price list")]
    [InlineData("'J' || i as job_id, 1 as line, 'drain_pump' as component from range(10) as r(i)", "10.0", null, null)]
    [InlineData("'J' || i as job_id, 1 as line, 'PX-1' as part_number from range(10) as r(i)", "null", "what the parts cost", "Add a price list")]
    [InlineData("'J' || i as job_id, 1 as line, 'ZZ-9' as part_raw, 'drain_pump' as component from range(10) as r(i)", "10.0", "a part number that is in the catalog", "Answer the open questions about part numbers")]
    public void Read_PartLinesOfAPlan_AdviceIsWhatThePlanLacks(string lines, string price, string? what, string? advice)
    {
        IReadOnlyList<Gap> gaps = Gaps("i as i", lines, price);
        Assert.Equal(what, gaps.Count == 0 ? null : gaps[0].What);
        Assert.True(gaps.Count == 0 || (gaps[0].Fix.StartsWith(advice!, StringComparison.Ordinal) && gaps[0].Answers == "10 for the van plan"));
    }

    [Fact]
    public void First_NothingBringsAJobBack_SaysNothing() => Assert.Null(Gap.First([new Gap("the age of the appliance", 10, 10, 0, "", "")]));

    // Ten whole jobs with some columns changed.
    private static IReadOnlyList<Gap> Gaps(string changed, string lines = "'none' as job_id limit 0", string price = "null")
    {
        using Database database = SectionCase.Session();
        database.Execute($"create table whole as (select i, {Whole} from range(10) as r(i))");
        database.Execute($"insert into jobs by name select * exclude (i) from (select * replace ({changed}) from whole)");
        database.Execute($"insert into job_parts by name select {lines}");
        database.Execute($"insert into parts by name select 'PX-1' as part_number, 'drain_pump' as component, {price}::decimal(12, 2) as price");
        return Gap.Read(database);
    }
}
