using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class OpeningSectionTests
{
    private const string Figures = """
        month_figures as
        select date '2024-05-01' as month, 412 as calls, 41 as still_open, 9 as end_not_told, 0 as visits_known, null::double as first_visit_share, null::double as first_visit_lower,
            null::double as first_visit_upper, 310 as cause_known, 0.28 as no_part_share, 0.23 as no_part_lower, 0.33 as no_part_upper, 33 as family_unknown, 90 as age_unknown, 4 as complaint_unknown
        union all
        select date '2023-05-01', 377, 0, 0, 300, 0.62, 0.57, 0.67, 290, 0.3, 0.25, 0.35, 30, 80, 2
        """;

    private const string Needs = """
        month_needs as
        select date '2024-05-01' as month, need, calls, 310 as cause_known, calls / 310 as share, 0.08 as lower, 0.15 as upper
        from (values ('none', 90), ('drain_pump', 34), ('inlet_valve', 30)) as t(need, calls)
        """;

    private static readonly DataQualityFacts NoFiles = new([], [], [], []);

    [Fact]
    public void Read_NoFigures_TellsAMonthWithoutCalls()
    {
        using Database database = SectionCase.Session();
        OpeningFacts facts = OpeningSection.Read(database, SectionCase.Options, null, null, NoFiles);
        Assert.Equal(0, facts.Now.Calls);
        string text = SectionCase.Text(OpeningSection.Build(facts));
        Assert.Contains("No call of May 2024 is in the files.", text, StringComparison.Ordinal);
        Assert.Contains("is not known (no calls)", text, StringComparison.Ordinal);
        Assert.Contains("Whether anything is rising was not computed; how many repairs came back is not known.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_MonthAndYearAgo_StandBesideEachOther()
    {
        using Database database = SectionCase.Session(Figures, Needs);
        OpeningFacts facts = OpeningSection.Read(database, SectionCase.Options, null, null, NoFiles);
        Assert.Null(facts.Before);
        Assert.Equal(("drain_pump", 34L), (facts.Now.TopComponent, facts.Now.TopCalls));
        IReadOnlyList<string> sentences = OpeningSentences.Write(facts);
        Assert.Equal("In May 2024 the shop took 412 calls (377 a year earlier); 362 of them were closed by June 12, 2024; for 9, the log does not say whether they are finished.", sentences[0]);
        Assert.StartsWith("How many were finished at the first visit is not known (no closed repair of the month records its visits)", sentences[1], StringComparison.Ordinal);
    }

    // Four closed jobs, one of them declined; three causes, each once: a share or a leader would say more than the data.
    [Fact]
    public void Write_HandfulOfCalls_NamesThemAndRanksNothing()
    {
        OpeningFacts facts = Small(Estimate.From(2.0 / 3, 0.21, 0.94), 3, "drain_hose", 1, [new("drain_hose", 1), new("drive_belt", 1), new("none", 1)]);
        IReadOnlyList<string> sentences = OpeningSentences.Write(facts);
        Assert.Equal("Of 3 closed repairs whose visits are recorded (1 more closed job does not count: declined, not repaired, or visits not recorded), 2 were finished at the first visit (3 of 7 the month before).", sentences[1]);
        Assert.Equal("The cause of 3 calls is known: drain hose, drive belt, no part needed.", sentences[2]);
    }

    [Fact]
    public void Write_SeveralPartsShareTheTopCount_NamesNone() => Assert.Contains(
        "no part leads: 2 parts were at fault in 3 calls each",
        OpeningSentences.Write(Small(Estimate.None("none"), 8, "drain_hose", 3, [new("drain_hose", 3), new("drive_belt", 3), new("none", 2)]))[2], StringComparison.Ordinal);

    [Fact]
    public void Build_MonthTheFilesDoNotReach_ShowsADash()
    {
        using Database database = SectionCase.Session(Figures, Needs);
        Section section = OpeningSection.Build(OpeningSection.Read(database, SectionCase.Options, null, null, NoFiles));
        Assert.Equal([new Cell(412L, CellKind.Count), new Cell(null, CellKind.Count), new Cell(377L, CellKind.Count)], SectionCase.Table(section, "headlines").Rows[0].Skip(1).Take(3));
    }

    private static OpeningFacts Small(Estimate firstVisit, long causes, string top, long topCalls, IReadOnlyList<NeedCalls> needs) => new(
        new MonthFacts(SectionCase.Month, 10, 6, 3, firstVisit, causes, Estimate.From(0.25, 0.05, 0.6), top, topCalls, Estimate.From(0.33, 0.06, 0.79), 0, 0, 0),
        new MonthFacts(SectionCase.Month.AddMonths(-1), 7, 0, 7, Estimate.From(3.0 / 7, 0.16, 0.75), 7, Estimate.From(0, 0, 0.35), null, 0, Estimate.None("none"), 0, 0, 0),
        null, [], null, 30, 0, 846, new DateOnly(2024, 6, 12))
    {
        Needs = needs,
    };

    [Fact]
    public void Read_RepairsStillWatched_AreNotTheHeadline()
    {
        using Database database = SectionCase.Session();
        ReturnMonth Repaired(int month, long watched) => new(new DateOnly(2024, month, 1), 100, 5, Estimate.From(0.05, 0.02, 0.1), watched);
        var returns = new ReturnFacts(30, [Repaired(2, 0), Repaired(3, 0), Repaired(4, 0), Repaired(5, 7)], [], [], null, "");
        OpeningFacts facts = OpeningSection.Read(database, SectionCase.Options, null, returns, NoFiles);
        Assert.Equal(new DateOnly(2024, 4, 1), facts.CameBack!.Month);
        Assert.Equal(new DateOnly(2024, 3, 1), facts.CameBackBefore!.Month);
        Assert.Null(facts.CameBackYearAgo);
    }
}
