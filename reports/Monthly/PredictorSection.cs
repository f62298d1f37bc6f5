using PartsSignal.Reports.Charts;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>How far the predictor's odds can be trusted.</summary>
public static class PredictorSection
{
    /// <summary>Puts the section together.</summary>
    /// <param name="facts">What is known; null: nothing was learned.</param>
    public static Section Build(PredictorFacts? facts) => new("predictor", "The predictor's record", [.. Blocks(facts)]);

    private static IEnumerable<IBlock> Blocks(PredictorFacts? facts)
    {
        if (facts is null || facts.Rows.Count == 0)
        {
            yield return new Missing("The predictor has no record: there were too few closed jobs with a known cause to learn from and then to test on later months.");
            yield break;
        }

        yield return new Paragraph(facts.Answers);
        yield return Scores("predictor", "On months it had not seen", "Closed jobs of the test months; log loss: lower is better, 0 would be perfect.", facts.Rows);
        yield return facts.Month.Count == 0
            ? new Missing("No closed call of this month was among those tested.")
            : Scores("predictor-month", "On the calls of this month", "Closed jobs of this month, predicted from what was known when the call came in.", facts.Month);
        if (facts.Bins.Count > 0)
        {
            yield return Plot(facts);
        }

        if (facts.Card.Count > 0)
        {
            yield return new TableView("model-card", "Model card", "What answers, and what it is not for.",
                [new("Point"), new("What to know")], [.. facts.Card.Select(c => (IReadOnlyList<object?>)[c.Point, c.Text])]);
        }
    }

    private static TableView Scores(string key, string title, string basis, IReadOnlyList<ScoreRow> rows) => new(key, title, basis,
        [new("Answered by"), new("Calls"), new("Jobs", CellKind.Count), new("Log loss, nats", CellKind.Number), new("First answer right", CellKind.Share), new("Right within three", CellKind.Share), new("Calibration error", CellKind.Share)],
        [.. rows.Select(r => (IReadOnlyList<object?>)[r.Contender, r.Calls, r.Jobs, r.LogLoss, r.Top1, r.Top3, r.CalibrationError])]);

    private static CalibrationPlot Plot(PredictorFacts facts)
    {
        int off = facts.Bins.Count(b => b.CameTrue is { Lower: { } low, Upper: { } high } && (b.Stated < low || b.Stated > high));
        string conclusion = off == 0
            ? "The odds can be taken at their word: every group's interval holds the odds stated."
            : $"In {off} of {facts.Bins.Count} groups the odds stated lie outside the interval of what came true; there they are to be read with care.";
        return new CalibrationPlot(
            new ChartText("calibration", "Odds stated and what came true", conclusion, facts.BinBasis,
                string.Join("; ", facts.Bins.Select(b => $"stated {Format.Percent(b.Stated)}, came true {Format.Share(b.CameTrue)}")) + "."),
            facts.Bins);
    }
}
