using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class AgeSectionTests
{
    private const string Summary = """
        age_curve_summary as
        select 'washer' as appliance_type, component, model_family, basis, condition, 212 as units, 48 as failures, median as median_years, median - 1 as median_lower, null::double as median_upper,
            null::varchar as median_missing, nature, others_ratio, others_ratio - 0.7 as others_lower, others_ratio + 0.8 as others_upper, others_p, curve_missing
        from (values
            ('drain_pump', 'all', 'register', null::varchar, 9.0::double, 'wear', null::double, null::double, null::varchar),
            ('drain_pump', 'K41', 'register', null, 6.0, null, 2.5, 0.01, null),
            ('igniter', 'all', 'log', 'of the failures we were called to up to 12.0 years of age', null, 'chance', null, null, null),
            ('door_seal', 'all', 'log', null, null, null, null, null, 'too few failures of known age')
        ) as t(component, model_family, basis, condition, median, nature, others_ratio, others_p, curve_missing)
        """;

    private const string Points = """
        age_curve_points as
        select 'washer' as appliance_type, component, family as model_family, basis, age::double as age_years, age / 20 as share_failed, age / 40 as lower, age / 10 as upper
        from (values ('drain_pump', 'all', 'register'), ('drain_pump', 'K41', 'register'), ('igniter', 'all', 'log')) as t(component, family, basis), range(3) as r(age)
        """;

    [Fact]
    public void Read_NoCurves_IsNullAndSaysWhatItTakes()
    {
        using Database database = SectionCase.Session();
        Assert.Null(AgeSection.Read(database));
        Assert.Contains("A register helps most", SectionCase.Text(AgeSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CurvesOfRegisterAndLog_SayWhatTheyRestOn()
    {
        using Database database = SectionCase.Session(Summary, Points);
        AgeFacts facts = AgeSection.Read(database)!;
        Assert.Equal(["Washer, drain pump, the listed machines: share still without a failure", "Washer, igniter, all machines: share of the failures we were called to that came after each age"], facts.Groups.Select(g => g.Name));
        Assert.Equal(["all families", "family K41"], facts.Groups[0].Curves.Select(c => c.Name));
        Assert.Equal("Half of the listed machines had a failure of the drain pump by 9.00 years (from 8.00). Wears out with age. Family K41 failed 2.50 (1.80–3.30) times as often as its type would at the same ages.", facts.Groups[0].Conclusion);
        Assert.Equal("At which age half of the igniter failures came is not known. Fails about equally at any age.", facts.Groups[1].Conclusion);
    }

    // The smallest of twenty chances is below 0.04 in more than half of all types whose families are alike.
    [Fact]
    public void Read_OneOfManyFamiliesThatMayDifferByChance_IsNotNamed()
    {
        string many = string.Join(", ", Enumerable.Range(0, 19).Select(i => $"('drain_pump', 'F{i:00}', 'register', null, null, null, 1.0, 0.5, null)"));
        string few = Summary.Replace("2.5, 0.01, null)", "2.5, 0.01, null), ('drain_pump', 'F99', 'register', null, null, null, 1.0, 0.5, null)", StringComparison.Ordinal);
        using Database none = SectionCase.Session(Summary.Replace("2.5, 0.01, null)", "2.5, 0.01, null), " + many, StringComparison.Ordinal), Points);
        using Database one = SectionCase.Session(few, Points);
        Assert.DoesNotContain("Family K41", AgeSection.Read(none)!.Groups[0].Conclusion, StringComparison.Ordinal);
        Assert.Contains("Family K41", AgeSection.Read(one)!.Groups[0].Conclusion, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Points_AreSharesWithoutFailureWithTheirEndsTurnedRound()
    {
        using Database database = SectionCase.Session(Summary, Points);
        Assert.Equal(new PartsSignal.Reports.Charts.CurvePoint(2, 90, 80, 95), AgeSection.Read(database)!.Groups[0].Curves[0].Points[2]);
    }

    [Fact]
    public void Build_ComponentWithoutACurve_IsListedWithItsReason()
    {
        using Database database = SectionCase.Session(Summary, Points);
        Assert.Equal(["washer door seal", 48L, "too few failures of known age"], SectionCase.Table(AgeSection.Build(AgeSection.Read(database)), "ages-not-drawn").Rows[0]);
    }

    // A register is there: advising one would be no help.
    [Fact]
    public void Build_RegisterWithFewFailures_SaysHowManyItTakes()
    {
        using Database database = SectionCase.Session(
            Summary.Replace("48 as failures", "2 as failures", StringComparison.Ordinal), Points,
            "register_machines as select 34 as machines, 0 as type_unknown, 'contract' as whose, 'household' as log_whose");
        AgeFacts facts = AgeSection.Read(database)!;
        Assert.Empty(facts.Groups);
        Assert.Contains(new AgeRefusal("washer drain pump", 2, "fewer than 8 failures at a known age"), facts.NotDrawn);
        Assert.Contains(
            "It takes at least 8 failures of one part at a known age; the most so far is 2 (washer door seal). Record the serial number on each job", SectionCase.Text(AgeSection.Build(facts)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ContractAndHouseholdMachines_NeverShareAHeadline()
    {
        using Database database = SectionCase.Session(Summary, Points, "register_machines as select 300 as machines, 12 as type_unknown, 'mixed' as whose, 'household' as log_whose");
        AgeFacts facts = AgeSection.Read(database)!;
        Assert.DoesNotContain("Half of", facts.Groups[0].Conclusion, StringComparison.Ordinal);
        Assert.Contains("mixes contract and household machines", facts.Groups[0].Conclusion, StringComparison.Ordinal);
        Assert.Contains("12 are of unknown type", facts.Groups[0].Conclusion, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_ContractMachines_AreNamedAndNotForHouseholds()
    {
        using Database database = SectionCase.Session(Summary, Points, "register_machines as select 300 as machines, 0 as type_unknown, 'contract' as whose, 'household' as log_whose");
        AgeFacts facts = AgeSection.Read(database)!;
        Assert.Contains("the listed contract machines", facts.Groups[0].Name, StringComparison.Ordinal);
        Assert.Contains("Do not use the figures for households.", facts.Groups[0].Method, StringComparison.Ordinal);
        Assert.Contains("household machines", facts.Groups[1].Name, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LogAlone_SaysWhenHalfOfTheFailuresCameAndNotHowManyFail()
    {
        using Database database = SectionCase.Session(Summary, Points.Replace("range(3)", "range(13)", StringComparison.Ordinal));
        Assert.StartsWith(
            "Of the igniter failures we were called to, half came before 10.0 years. This does not say how many fail.", AgeSection.Read(database)!.Groups[1].Conclusion, StringComparison.Ordinal);
    }
}
