using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>The month in five sentences, and its headline figures beside the month before and the year before.</summary>
public static class OpeningSection
{
    /// <summary>Puts the section together.</summary>
    public static Section Build(OpeningFacts facts) => new("month", "The month in five sentences",
        [new Sentences(OpeningSentences.Write(facts)), Headlines(facts)]);

    /// <summary>The sentences alone.</summary>
    public static IReadOnlyList<string> Sentences(OpeningFacts facts) => OpeningSentences.Write(facts);

    private static TableView Headlines(OpeningFacts facts)
    {
        MonthFacts?[] months = [facts.Now, facts.Before, facts.YearAgo];
        IReadOnlyList<object?> Row(string name, Func<MonthFacts, object> figure, CellKind kind, string basis) =>
            [name, .. months.Select(m => (object?)new Cell(m is null ? null : figure(m), kind)), basis];
        string year = Format.Month(facts.Now.Month.AddYears(-1));
        return new TableView("headlines", "Headline figures", "Jobs by the month of the call; a dash: the files do not reach that month.",
            [new("Figure"), new(Format.Month(facts.Now.Month)), new(Format.Month(facts.Now.Month.AddMonths(-1))), new(year), new("Basis")],
            [
                Row("Calls", m => m.Calls, CellKind.Count, "jobs opened"),
                Row("Still open", m => m.Open, CellKind.Count, "of those, not closed"),
                Row("Finished at first visit", m => m.FirstVisit, CellKind.Share, "closed jobs that record their visits"),
                Row("Cause known", m => m.Diagnosed, CellKind.Count, "jobs with a diagnosis"),
                Row("Needed no part", m => m.NoPart, CellKind.Share, "jobs with a diagnosis"),
                Row("Age not known", m => m.AgeUnknown, CellKind.Count, "jobs opened"),
                Row("Model family not known", m => m.ModelUnknown, CellKind.Count, "jobs opened"),
            ]);
    }
}
