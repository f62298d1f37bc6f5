using System.Globalization;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Asks for the order of the dates and for the decimal mark of a table where its cells leave them open or speak for both.</summary>
internal static class StyleQuestions
{
    // A few cells of the other style are slips; more of them are a doubt.
    private const int Slips = 4;
    private const int MostExamples = 3;
    private const double DatesWeight = 3;
    private const double NumbersWeight = 2.5;

    /// <summary>The questions of a table.</summary>
    /// <param name="reading">What it is taken for.</param>
    /// <param name="map">Its map, with the styles that hold if nobody answers.</param>
    /// <param name="answers">What a person has settled.</param>
    /// <param name="shop">What the other tables of the shop say.</param>
    public static IEnumerable<ReadingQuestion> Of(TableReading reading, SourceMap map, ReadingAnswers answers, ShopStyles shop)
    {
        ColumnProfile[] dates = ShopStyles.Dates(map, reading.Table.Profiles);
        int day = dates.Sum(d => d.Dates.DayFirst), month = dates.Sum(d => d.Dates.MonthFirst);
        bool openDates = !Array.Exists(dates, d => d.Dates.IsDecided) && dates.Sum(d => d.Dates.Ambiguous) > 0 && shop.DateOrder is null;
        if (answers.Dates(reading.Key) is null && (openDates || IsNearTie(day, month)))
        {
            string taken = map.DateOrder ?? "dmy";
            yield return Question(
                reading, "dates",
                $"In '{reading.Table.Sample.Place}' a date such as {Examples(reading, dates, IsOpenDate).FirstOrDefault() ?? "03/08"} can be read two ways. Which number comes first, the day or the month?",
                [new QuestionChoice("dmy", "the day comes first"), new QuestionChoice("mdy", "the month comes first")],
                [.. Examples(reading, dates, IsOpenDate)],
                $"Months, ages and repair times depend on this. Until you answer, {(taken == "mdy" ? "the month" : "the day")} comes first.",
                taken,
                DatesWeight);
        }

        ColumnProfile[] amounts = ShopStyles.Amounts(map, reading.Table.Profiles);
        int point = amounts.Sum(a => a.Numbers.Point), comma = amounts.Sum(a => a.Numbers.Comma);
        bool openAmounts = point + comma == 0 && amounts.Sum(a => a.Numbers.Ambiguous) > 0 && shop.NumberStyle is null;
        if (answers.Numbers(reading.Key) is null && (openAmounts || IsNearTie(point, comma)))
        {
            string taken = map.NumberStyle ?? "point";
            yield return Question(
                reading, "numbers",
                $"In '{reading.Table.Sample.Place}' an amount such as {Examples(reading, amounts, IsMarked).FirstOrDefault() ?? "1.250"} can be read two ways. Which mark stands before the cents?",
                [new QuestionChoice("point", "a point, as in 1,250.00"), new QuestionChoice("comma", "a comma, as in 1.250,00")],
                [.. Examples(reading, amounts, IsMarked)],
                $"Every amount in the table depends on this. Until you answer, it is a {taken}.",
                taken,
                NumbersWeight);
        }
    }

    private static bool IsNearTie(int one, int other) => Math.Min(one, other) > 0 && Math.Min(one, other) * Slips >= Math.Max(one, other);

    private static bool IsOpenDate(string cell) =>
        DateText.TryNumbers(cell, out int first, out int second, out int third) && first <= 12 && second <= 12 && first != second && third >= 0;

    private static bool IsMarked(string cell) => cell.AsSpan().IndexOfAny('.', ',') > 0;

    private static IEnumerable<string> Examples(TableReading reading, ColumnProfile[] columns, Func<string, bool> open) => reading.Table.AllColumns
        .Where(c => Array.Exists(columns, p => p.Index == c.Index))
        .SelectMany(c => c.Texts.Where(open))
        .Distinct(StringComparer.Ordinal)
        .Take(MostExamples);

    private static ReadingQuestion Question(TableReading reading, string about, string text, QuestionChoice[] choices, string[] examples, string consequence, string taken, double weight) => new(
        string.Create(CultureInfo.InvariantCulture, $"{reading.Key}/{about}"), reading.Table.Sample.File, reading.Table.Sample.Sheet, null, null,
        text, choices, examples, consequence, taken, weight * Math.Log10(10 + reading.Table.Sample.Rows));
}
