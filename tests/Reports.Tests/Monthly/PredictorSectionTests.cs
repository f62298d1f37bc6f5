using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Monthly;

namespace PartsSignal.Reports.Tests.Monthly;

public sealed class PredictorSectionTests
{
    private const string Scores = """
        prediction_scores as
        select predictor, slice, figure, 2210 as jobs, "value"
        from (values ('shipped', 'all', 'log_loss', 1.2::double), ('shipped', 'all', 'top1', 0.54), ('shipped', 'complaint:no_fill', 'log_loss', 1.1), ('back_off', 'all', 'log_loss', 1.3), ('stack', 'all', 'log_loss', 1.0))
            as t(predictor, slice, figure, "value")
        """;

    private const string Reliability = """
        prediction_reliability as
        select slice, 100 as jobs, said, happened, happened - 0.05 as lower, happened + 0.05 as upper
        from (values ('all', 0.2::double, 0.22::double), ('all', 0.8, 0.6), ('complaint:no_fill', 0.5, 0.5)) as t(slice, said, happened)
        """;

    private const string Months = """
        prediction_by_month as
        select '2024-05' as month, 180 as jobs, 1.25::double as log_loss, 1.7::double as log_loss_complaint_only, 1.35::double as log_loss_back_off, 0.5::double as top_1, 0.85::double as top_3
        """;

    private const string Contest = """
        prediction_contest as
        select what, 1865 as jobs, log_loss, ships from (values ('Log odds.', 1.277::double, true), ('Counts.', 1.407, false)) as t(what, log_loss, ships)
        """;

    [Fact]
    public void Read_NothingLearned_IsNullAndSaidSo()
    {
        using Database database = SectionCase.Session();
        Assert.Null(PredictorSection.Read(database, SectionCase.Options));
        Assert.Contains("The predictions have no record yet", SectionCase.Text(PredictorSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Scores_ShowWhatStandsBesideThePredictorAndNothingElse()
    {
        PredictorFacts facts = Filled();
        Assert.Equal(
            [("this program", "all calls", 1.2), ("counting by model, family and type", "all calls", 1.3), ("this program", "no fill", 1.1)],
            facts.Rows.Select(r => (r.Contender, r.Calls, r.LogLoss!.Value)));
        Assert.Null(facts.Rows[0].Top3);
        Assert.Equal([180L, 180, 180], facts.Month.Select(m => m.Jobs));
        Assert.Equal("The answers were tried on later jobs that nothing had been learned from. This way of answering was chosen from 2 that were tried on earlier months.", facts.Answers);
        Assert.Equal(("How it answers", "Log odds."), facts.Card[0]);
    }

    [Fact]
    public void Build_GroupOutsideItsInterval_IsCounted() => Assert.Contains(
        "In 1 of 2 groups, what came true does not agree with the stated chances; by chance alone, about one in 20 would not.", SectionCase.Text(PredictorSection.Build(Filled())), StringComparison.Ordinal);

    [Fact]
    public void Build_FewJobsWithinTheirIntervals_AreNoReasonToRelyOnTheOdds()
    {
        using Database database = SectionCase.Session(Scores, Reliability.Replace("('all', 0.8, 0.6)", "('all', 0.8, 0.8)", StringComparison.Ordinal), Months);
        string text = SectionCase.Text(PredictorSection.Build(PredictorSection.Read(database, SectionCase.Options)));
        Assert.Contains("Nothing speaks against the stated chances, but 200 jobs would show only large errors.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_MonthThatWasNotTested_SaysSo()
    {
        using Database database = SectionCase.Session(Scores, Reliability, Months);
        PredictorFacts facts = PredictorSection.Read(database, SectionCase.Options with { Month = SectionCase.Month.AddMonths(1) })!;
        Assert.Contains("No closed call of this month was among those tested.", SectionCase.Text(PredictorSection.Build(facts)), StringComparison.Ordinal);
    }

    [Fact]
    public void Build_Record_SpeaksInPlainWordsAndKeepsTheScoresForTheNotes()
    {
        using Database database = SectionCase.Session(
            Scores.Replace("('stack', 'all', 'log_loss', 1.0)", "('shipped', 'all', 'top3', 0.85), ('complaint_only', 'all', 'top1', 0.4)", StringComparison.Ordinal), Reliability, Months, Contest);
        Section section = PredictorSection.Build(PredictorSection.Read(database, SectionCase.Options));
        string text = SectionCase.Text(section);
        Assert.Contains("On 2,210 later jobs that it had not learned from, the first answer was right 54.0 % (51.9–56.1) of the time, and the right one was among the first three 85.0 % (83.4–86.4) of the time. A tally sheet per complaint would have been right 40.0 % of the time on the same jobs.", text, StringComparison.Ordinal);
        Assert.Contains("Of 180 closed jobs of this month, the first answer was right in 90, and the right one was among the first three in 153.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("..", text, StringComparison.Ordinal);
        Assert.DoesNotContain(SectionCase.Table(section, "predictor").Columns, c => c.Head.Contains("loss", StringComparison.Ordinal));
        Assert.Contains(SectionCase.Table(section, "predictor-notes").Columns, c => c.Head == "Log loss");
    }

    private static PredictorFacts Filled()
    {
        using Database database = SectionCase.Session(Scores, Reliability, Months, Contest);
        return PredictorSection.Read(database, SectionCase.Options)!;
    }
}
