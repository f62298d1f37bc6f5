using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class BadBatchSectionTests
{
    private const string Batches = """
        bad_batches as select 'washer' as appliance_type, 'K41' as model_family, 'inlet_valve' as component, date '2021-01-01' as built_from, date '2021-12-01' as built_to,
            5 as under_years, 32::bigint as cases, 97::bigint as calls, 12::bigint as other_cases, 202::bigint as other_calls, 11.4::double as expected,
            4::bigint as built_later_calls, 30::bigint as largest_customer_cases, false as survives_customer, 61::bigint as units_out, 20::bigint as units_listed
        """;

    private const string Jobs = "bad_batch_jobs as select 'washer' as appliance_type, 'K41' as model_family, 'inlet_valve' as component, 'J1' as job_id";

    [Fact]
    public void Build_Batch_NamesUnitsEvidenceDoubtsAndWhatToDo()
    {
        using Database database = SectionCase.Session(Batches, Jobs, "bad_batch_tests as select 3 as spans_tried from range(7)");
        string text = SectionCase.Text(BadBatchSection.Build(BadBatchSection.Read(database, SectionCase.Options.AsOf)));
        Assert.Contains("1. Washer inlet valve, family K41, built January 2021 to December 2021", text, StringComparison.Ordinal);
        Assert.Contains("Of 97 calls about these machines under 5 years of age, 32 needed the inlet valve.", text, StringComparison.Ordinal);
        Assert.Contains("Of the family's other 202 calls under 5 years of age, 12 did.", text, StringComparison.Ordinal);
        Assert.Contains("One customer has 30 of these cases", text, StringComparison.Ordinal);
        Assert.Contains("not known whether the fault has ended", text, StringComparison.Ordinal);
        Assert.Contains("61 more of these machines that have not had it yet, 20 of them on your register", text, StringComparison.Ordinal);
        Assert.Contains("check the inlet valve whenever you are at one of these machines", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_NoUnitKnown_SaysUnknown()
    {
        using Database database = SectionCase.Session(Batches.Replace("61::bigint as units_out", "null::bigint as units_out", StringComparison.Ordinal), Jobs, "bad_batch_tests as select 3 as spans_tried");
        Assert.Contains("How many of these machines are still out there is unknown.",
            SectionCase.Text(BadBatchSection.Build(BadBatchSection.Read(database, SectionCase.Options.AsOf))), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_NothingCouldBeTried_SaysWhatIsMissing() =>
        Assert.IsType<Missing>(Assert.Single(BadBatchSection.Build(new BadBatchFacts([], 0, SectionCase.Options.AsOf)).Blocks));

    [Fact]
    public void Build_NothingFound_SaysHowMuchWasCompared() => Assert.Contains(
        "No build months of any family stand out. We compared the build months of 31 combinations",
        SectionCase.Text(BadBatchSection.Build(new BadBatchFacts([], 31, SectionCase.Options.AsOf))), StringComparison.Ordinal);
}
