using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class AgeSectionTests
{
    private const string Summary = """
        age_curve_summary as
        select 'washer' as appliance_type, component, model_family, basis, condition, 212 as units, 48 as failures, median as median_years, median - 1 as median_lower, null::double as median_upper,
            null::varchar as median_missing, nature, others_ratio, others_p, curve_missing
        from (values
            ('drain_pump', 'all', 'register', null::varchar, 9.0::double, 'wear', null::double, null::double, null::varchar),
            ('drain_pump', 'K41', 'register', null, 6.0, null, 2.5, 0.01, null),
            ('igniter', 'all', 'log', 'given that it fails by 12 years', null, 'chance', null, null, null),
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
        Assert.Contains("it takes a register, or enough dated failures", SectionCase.Text(AgeSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_CurvesOfRegisterAndLog_SayWhatTheyRestOn()
    {
        using Database database = SectionCase.Session(Summary, Points);
        AgeFacts facts = AgeSection.Read(database)!;
        Assert.Equal(["Washer, drain pump: share still without a failure", "Washer, igniter: share of failures not yet come"], facts.Groups.Select(g => g.Name));
        Assert.Equal(["all families", "family K41"], facts.Groups[0].Curves.Select(c => c.Name));
        Assert.Equal("Half have failed by 9.00 years (from 8.00). The rate grows with age: wear. Family K41 failed 2.50 times as often as its type would at the same ages.", facts.Groups[0].Conclusion);
        Assert.Equal("The age by which half have failed is not known (not reached). The rate hardly changes with age: chance.", facts.Groups[1].Conclusion);
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
}
