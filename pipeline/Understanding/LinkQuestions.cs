using System.Globalization;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A column of which only a part of the values stands in the key of another table.</summary>
/// <param name="Table">The table of the column.</param>
/// <param name="Column">The column.</param>
/// <param name="Other">The other table.</param>
/// <param name="Key">Its column that names its rows.</param>
/// <param name="Share">Share of the column's different values that the key holds.</param>
internal sealed record PossibleLink(SampledTable Table, ColumnSample Column, SampledTable Other, ColumnSample Key, double Share)
{
    /// <summary>What is written down if the link holds.</summary>
    public string Choice => ChoiceOf(Other, Key);

    /// <summary>How a column of a table is named in an answer.</summary>
    public static string ChoiceOf(SampledTable table, ColumnSample key) => $"{ReadingAnswers.KeyOf(table.Sample)}/{key.Name}";
}

/// <summary>Asks whether columns of two tables mean the same where the values say neither yes nor no.</summary>
internal static class LinkQuestions
{
    private const int Most = 2;
    private const double Weight = 1.5;
    private const int MostExamples = 3;

    /// <summary>The best supported links, as questions; of the years of one log one.</summary>
    /// <param name="links">The links that may hold.</param>
    public static IEnumerable<ReadingQuestion> Of(IEnumerable<PossibleLink> links)
    {
        var asked = new List<PossibleLink>();
        foreach (PossibleLink link in links.OrderByDescending(l => l.Share).ThenBy(l => ReadingAnswers.KeyOf(l.Table.Sample), StringComparer.Ordinal).ThenBy(l => l.Column.Index))
        {
            if (asked.Count < Most && !asked.Exists(a => a.Column.Name.Equals(link.Column.Name, StringComparison.OrdinalIgnoreCase) && (a.Table == link.Table || ShopRelations.IsTwin(a.Table.Sample, link.Table.Sample))))
            {
                asked.Add(link);
            }
        }

        return asked.Select(Question);
    }

    private static ReadingQuestion Question(PossibleLink link)
    {
        TableSample table = link.Table.Sample;
        int both = (int)Math.Round(link.Share * link.Column.Values.Count);
        string key = $"'{link.Key.Name}' of '{link.Other.Sample.Place}'";
        return new ReadingQuestion(
            $"{ReadingAnswers.KeyOf(table)}/link/{link.Column.Name}", table.File, table.Sheet, link.Column.Name, null,
            string.Create(CultureInfo.InvariantCulture, $"Does column '{link.Column.Name}' of '{table.Place}' mean the same as {key}? {both:N0} of its {link.Column.Values.Count:N0} values are there."),
            [new QuestionChoice(link.Choice, $"yes, look it up in {key}"), new QuestionChoice(ReadingAnswers.Nothing, "no, it is something else")],
            [.. link.Column.Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(MostExamples).Select(t => MaskedCells.Show(link.Column, t))],
            "Until you answer, nothing is looked up there.",
            ReadingAnswers.Nothing,
            Weight * link.Share * Math.Log10(10 + table.Rows));
    }
}
