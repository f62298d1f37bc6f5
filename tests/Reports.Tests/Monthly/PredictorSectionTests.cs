using PartsSignal.Analysis.Sql;
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
        Assert.Contains("The predictor has no record", SectionCase.Text(PredictorSection.Build(null)), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Scores_ShowWhatStandsBesideThePredictorAndNothingElse()
    {
        PredictorFacts facts = Filled();
        Assert.Equal(
            [("the predictor", "all", 1.2), ("counting, model to type", "all", 1.3), ("the predictor", "no fill", 1.1)],
            facts.Rows.Select(r => (r.Contender, r.Calls, r.LogLoss!.Value)));
        Assert.Null(facts.Rows[0].Top3);
        Assert.Equal([180L, 180, 180], facts.Month.Select(m => m.Jobs));
        Assert.StartsWith("Answers come from: Log odds.. It won against 1 others on 1,865 later jobs (log loss 1.277).", facts.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Build_GroupOutsideItsInterval_IsCounted() => Assert.Contains(
        "In 1 of 2 groups the odds stated lie outside the interval of what came true", SectionCase.Text(PredictorSection.Build(Filled())), StringComparison.Ordinal);

    [Fact]
    public void Build_MonthThatWasNotTested_SaysSo()
    {
        using Database database = SectionCase.Session(Scores, Reliability, Months);
        PredictorFacts facts = PredictorSection.Read(database, SectionCase.Options with { Month = SectionCase.Month.AddMonths(1) })!;
        Assert.Contains("No closed call of this month was among those tested.", SectionCase.Text(PredictorSection.Build(facts)), StringComparison.Ordinal);
        Assert.StartsWith("It is shown beside what a shop would say", facts.Answers, StringComparison.Ordinal);
    }

    private static PredictorFacts Filled()
    {
        using Database database = SectionCase.Session(Scores, Reliability, Months, Contest);
        return PredictorSection.Read(database, SectionCase.Options)!;
    }
}
