using PartsSignal.Analysis.Rates;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Tests.Commands;

public class RatesQueryTests
{
    private static readonly FailureRate[] Table =
    [
        Rate("type", "inlet_valve", 30),
        Rate("type", "timer", 0),
        Rate("family", "inlet_valve", 12) with { ModelFamily = "NW100" },
        Rate("family", "inlet_valve", 18) with { ModelFamily = "NW200" },
        Rate("age", "inlet_valve", 5) with { AgeBand = "4-6" },
        Rate("complaint", "inlet_valve", 9) with { GivenComplaint = "no_fill" },
        Rate("type", "no_fill", 40) with { SubjectKind = RateSubject.Complaint },
    ];

    [Fact]
    public void Parse_SeveralFaults_NamesThemAll()
    {
        var bad = Assert.Throws<BadInputException>(() =>
            RatesQuery.Parse(new RatesSettings { Age = "5-6", Complaint = "no_fill", Month = "2026-13" }));
        Assert.Equal(3, bad.Faults.Count);
        Assert.Contains("--age 5-6", bad.Faults[0], StringComparison.Ordinal);
        Assert.Contains("--month 2026-13", bad.Faults[2], StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_Month_IsItsFirstDay() =>
        Assert.Equal(new DateOnly(2026, 9, 1), RatesQuery.Parse(new RatesSettings { Month = "2026-09" }).Month);

    [Fact]
    public void Select_NothingAsked_GivesWhatHappenedByType() =>
        Assert.Equal(["inlet_valve"], Ask().Select(Table).Select(r => r.Subject));

    [Fact]
    public void Select_Component_GivesTypeThenItsFamilies() =>
        Assert.Equal([null, "NW200", "NW100"], Ask(component: "inlet_valve").Select(Table).Select(r => r.ModelFamily));

    [Fact]
    public void Select_Complaint_GivesWhatSuchCallsNeededAndHowOftenTheyCome() =>
        Assert.Equal(["no_fill", "inlet_valve"], Ask(complaint: "no_fill").Select(Table).Select(r => r.Subject));

    [Fact]
    public void Select_Age_GivesThatBandAlone() =>
        Assert.Equal([5L], Ask(age: "4-6").Select(Table).Select(r => r.Events));

    [Theory]
    [InlineData("brand", null, "Norvik")]
    [InlineData("age", null, "4-6")]
    [InlineData("complaint", "inlet_valve", "no_fill")]
    [InlineData("family", "inlet_valve", "NW200 NW100")]
    [InlineData("supplier", null, "Aster")]
    public void Select_By_SplitsByThatAlone(string by, string? component, string members)
    {
        FailureRate[] table =
        [
            .. Table,
            Rate("brand", "inlet_valve", 8) with { Brand = "Norvik" },
            Rate("supplier", "inlet_valve", 4) with { Supplier = "Aster", Basis = RateBasis.PartYears },
        ];
        Assert.Equal(
            members.Split(' '),
            Ask(component, by: by).Select(table).Select(r => r.Brand ?? r.AgeBand ?? r.GivenComplaint ?? r.ModelFamily ?? r.Supplier));
    }

    [Fact]
    public void Select_ByComplaint_GivesHowOftenEachIsMade() =>
        Assert.Equal(["no_fill"], Ask(by: "complaint").Select(Table).Select(r => r.Subject));

    [Fact]
    public void Parse_SplitThatIsNotCounted_IsRefused()
    {
        Assert.Contains("--by colour", Assert.Throws<BadInputException>(() => RatesQuery.Parse(new RatesSettings { By = "colour" })).Message, StringComparison.Ordinal);
        Assert.Contains("--by supplier", Assert.Throws<BadInputException>(() => RatesQuery.Parse(new RatesSettings { By = "supplier", Family = "NW100" })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Select_NamesNotInTheLog_AreAllNamed()
    {
        var bad = Assert.Throws<BadInputException>(() => Ask(component: "flux_coil", family: "XX").Select(Table));
        Assert.Equal(
            ["--component flux_coil: your log has no such calls. Choose from inlet_valve, timer.", "--family XX: your log has no such calls. Choose from NW100, NW200."],
            bad.Faults);
    }

    [Fact]
    public void Select_NameNotInALongLog_NamesSimilarOnesOrWhereAllAreListed()
    {
        FailureRate[] many = [.. Enumerable.Range(0, 101).Select(i => Rate("family", i < 3 ? $"inlet_part_{i}" : $"part_{i % 60:00}", 1) with { ModelFamily = $"F{i}" })];
        IReadOnlyList<string> faults = Assert.Throws<BadInputException>(() => Ask(component: "inlet flap", family: "XX").Select(many)).Faults;
        Assert.Equal(
            ["--component inlet flap: your log has no such calls. Similar names: inlet_part_0, inlet_part_1, inlet_part_2.", "--family XX: your log has no such calls. See all names with 'partssignal rates --by family'."],
            faults);
    }

    private static RatesQuery Ask(string? component = null, string? family = null, string? age = null, string? complaint = null, string? by = null) =>
        new(component, family, age, complaint, null, by);

    private static FailureRate Rate(string grouping, string subject, long events) => new()
    {
        Basis = RateBasis.ShareOfCalls,
        Grouping = grouping,
        ApplianceType = "washer",
        SubjectKind = RateSubject.Component,
        Subject = subject,
        Events = events,
        Exposure = 100,
        ExposureUnit = "calls",
        NotKnown = 0,
        Unit = "share",
        Estimate = events / 100.0,
    };
}
