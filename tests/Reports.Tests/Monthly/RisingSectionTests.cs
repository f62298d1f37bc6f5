using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class RisingSectionTests
{
    private const string Scans = "trend_scans as select date '2024-05-01' as month, 237 as series_tested, 237 as series_summed, 1.9::double as false_per_year";
    private const string AlarmJobs = "trend_alarm_jobs as select date '2024-05-01' as month, 'month' as kind, 'washer' as appliance_type, 'inlet_valve' as component, 'K41' as model_family, 'J1' as job_id";

    private const string Alarms = """
        trend_alarms as
        select month, kind, appliance_type, component, model_family, observed, 2.1::double as expected, 4.3::double as ratio, case kind when 'month' then 2.0::double end as least_ratio,
            p, q, since, 3 as largest_customer_cases, true as survives_customer, 'Tilly' as largest_technician, false as survives_technician,
            null::varchar as largest_model, null::boolean as survives_model, date '2023-01-01' as built_from, date '2023-03-01' as built_to, 8 as built_cases, 9 as built_known, part_of
        from (values
            (date '2024-05-01', 'drift', 'dryer', 'igniter', 'all', 12, null::double, null::double, date '2024-02-01', null),
            (date '2024-05-01', 'month', 'washer', 'drain_pump', 'all', 7, 0.01, 0.05, null, null),
            (date '2024-05-01', 'month', 'washer', 'inlet_valve', 'K41', 9, 0.0004, 0.002, null, null),
            (date '2024-05-01', 'month', 'washer', 'all', 'K41', 14, 0.002, 0.01, null, 'washer / inlet_valve / K41'),
            (date '2024-03-01', 'month', 'range', 'none', 'all', 5, 0.001, 0.01, null, null),
            (date '2023-10-01', 'month', 'range', 'igniter', 'all', 5, 0.001, 0.01, null, null)
        ) as t(month, kind, appliance_type, component, model_family, observed, p, q, since, part_of)
        """;

    [Fact]
    public void Read_MonthThatWasNotScanned_IsNull()
    {
        using Database database = SectionCase.Session(Scans, Alarms);
        Assert.Null(RisingReader.Read(database, SectionCase.Month.AddMonths(1)));
        using Database without = SectionCase.Session();
        Assert.Null(RisingReader.Read(without, SectionCase.Month));
    }

    [Fact]
    public void Read_Alarms_StandAloneExplainedOrEarlier()
    {
        using Database database = Filled();
        RisingFacts facts = RisingReader.Read(database, SectionCase.Month)!;
        Assert.Equal(["washer inlet valve, family K41", "washer drain pump", "dryer igniter"], facts.Alarms.Select(a => a.Name));
        Assert.Equal([false, false, true], facts.Alarms.Select(a => a.Slow));
        ExplainedAlarm part = Assert.Single(facts.Parts);
        Assert.Equal(("all washer calls, family K41", "washer inlet valve, family K41"), (part.Name, part.PartOf));
        Assert.Equal("range calls that needed no part", Assert.Single(facts.Before).Name);
        Assert.Equal("J1", Assert.Single(facts.Alarms[0].Jobs).JobId);
    }

    [Fact]
    public void Read_Evidence_NamesTheBatchAndWhomTheRiseHangsOn()
    {
        using Database database = Filled();
        Assert.Equal(
            [
                "8 of 9 appliances of known build month were built from January 2023 to March 2023: this points to a bad batch.",
                "It stays a rise without the customer with most cases (3).",
                "Without technician Tilly it is no rise any more: look there first.",
            ],
            RisingReader.Read(database, SectionCase.Month)!.Alarms[0].Evidence);
    }

    [Fact]
    public void Build_SlowRise_SaysSinceWhenAndNoChance()
    {
        using Database database = Filled();
        string text = SectionCase.Text(RisingSection.Build(RisingReader.Read(database, SectionCase.Month)));
        Assert.Contains("12 calls since it began where about 2.10 were expected. How large the rise is cannot be told: its first month was chosen because the rise looks clearest from there. The rise began about February 2024.", text, StringComparison.Ordinal);
        Assert.Contains("The true rate is very likely at least 2.00 times the usual, even allowing for the fact that only the biggest rises are listed. By chance", text, StringComparison.Ordinal);
        Assert.Contains("By chance alone so many would come in about 1 month in 2,500.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_MoreAlarmsThanAreDrawn_ListsTheRest()
    {
        using Database database = Filled();
        RisingFacts facts = RisingReader.Read(database, SectionCase.Month)!;
        Section section = RisingSection.Build(facts with { Alarms = [.. Enumerable.Repeat(facts.Alarms[2], 8)] });
        Assert.Equal(2, SectionCase.Table(section, "rising-more").Rows.Count);
        Assert.Equal(6, section.Blocks.OfType<SubHeading>().Count());
    }

    [Fact]
    public void Build_NothingComputedOrNothingRising_SaysWhich()
    {
        Assert.Contains("they need a baseline of earlier months", SectionCase.Text(RisingSection.Build(null)), StringComparison.Ordinal);
        string quiet = SectionCase.Text(RisingSection.Build(new RisingFacts([], [], [], 237, "", "")));
        Assert.Contains("Nothing is clearly increasing. We checked 237 call counts: by part, by family, and by part within a family.", quiet, StringComparison.Ordinal);
        Assert.Contains("Nothing was flagged in the last six months.", quiet, StringComparison.Ordinal);
    }

    private static Database Filled()
    {
        Database database = SectionCase.Session(Scans, Alarms, AlarmJobs);
        database.Execute("insert into jobs (job_id, opened_on) values ('J1', date '2024-05-03')");
        return database;
    }
}
