using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The fields of a row read as days, amounts, counts and flags.</summary>
internal static class FieldValues
{
    /// <summary>A day. A cell that is no day refuses the row, or counts as unknown where the field is a lesser one.</summary>
    public static DateOnly? Day(this MappedRow row, MappedField field, bool lesser = false)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (DateText.TryDay(text, row.Style.Dates, out DateOnly day))
        {
            return day;
        }

        if (row.Style.CountsDays && SpreadsheetDay.TryRead(text, out DateTime counted))
        {
            return DateOnly.FromDateTime(counted);
        }

        (string what, string suggestion) = DateFault.Explain(text, row.Style.Dates);
        return Unusable<DateOnly>(row, field, lesser, ReasonCode.BadDate, what, suggestion);
    }

    /// <summary>A day; one without a year is the first such day from another day on.</summary>
    public static DateOnly? DayFrom(this MappedRow row, MappedField field, DateOnly earliest) =>
        earliest > default(DateOnly) && DateText.TryDayFrom(row.Span(field), row.Style.Dates, earliest, out DateOnly day) ? day : row.Day(field);

    /// <summary>A day; a month or a year stands for its middle day.</summary>
    public static DateOnly? ApproximateDay(this MappedRow row, MappedField field, bool lesser = false) =>
        MadeOnText.TryRead(row.Span(field), row.Style.Dates, out DateOnly from, out DateOnly to)
            ? from.AddDays((to.DayNumber - from.DayNumber) / 2)
            : row.Day(field, lesser);

    /// <summary>A day that the row cannot do without.</summary>
    public static DateOnly NeededDay(this MappedRow row, MappedField field)
    {
        DateOnly? day = row.Day(field);
        if (day is null)
        {
            row.Missing(field);
        }

        return day ?? default;
    }

    /// <summary>A day with time; a cell that is none counts as unknown.</summary>
    public static DateTime? Time(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        return EmptyMark.Is(text) ? null
            : DateText.TryTime(text, row.Style.Dates, out DateTime time) || (row.Style.CountsDays && SpreadsheetDay.TryRead(text, out time)) ? time
            : Unusable<DateTime>(row, field, true, ReasonCode.BadDate, "", "");
    }

    /// <summary>An amount.</summary>
    public static decimal? Money(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        NumberStyle numbers = row.IsNumberCell(field) ? NumberStyle.Point : row.Style.Numbers;
        return MoneyText.TryRead(text, numbers, out decimal amount) ? amount
            : Unusable<decimal>(row, field, false, ReasonCode.BadNumber, "this is not an amount in the file's number style", "Type the amount as 1234.50, or set numberStyle in the column map.");
    }

    /// <summary>A count, 0 or more.</summary>
    public static int? Quantity(this MappedRow row, MappedField field, bool lesser = false)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        NumberStyle numbers = row.IsNumberCell(field) ? NumberStyle.Point : row.Style.Numbers;
        if (!QuantityText.TryRead(text, numbers, out int count))
        {
            return Unusable<int>(row, field, lesser, ReasonCode.BadNumber, "this is not a whole number", "Type a whole number.");
        }

        return count >= 0 ? count : Unusable<int>(row, field, lesser, ReasonCode.OutOfRange, "the number is below zero", "Type 0 or more.");
    }

    /// <summary>Yes or no; a cell that is neither counts as unknown.</summary>
    public static bool? Flag(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        return text.IsEmpty ? null : YesNoText.TryRead(text, out bool yes) ? yes
            : EmptyMark.Is(text) ? null : Unusable<bool>(row, field, true, ReasonCode.BadNumber, "", "");
    }

    /// <summary>An age from 0 to a limit, in the field's unit; another cell counts as unknown.</summary>
    public static double? Age(this MappedRow row, MappedField field, double most)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (!NumberText.TryRead(text, row.Style.Numbers, out decimal age))
        {
            return Unusable<double>(row, field, true, ReasonCode.BadNumber, "", "");
        }

        return age >= 0 && (double)age <= most ? (double)age : Unusable<double>(row, field, true, ReasonCode.OutOfRange, "", "");
    }

    /// <summary>Working time in minutes; another cell counts as unknown.</summary>
    public static double? Duration(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        return EmptyMark.Is(text) ? null
            : DurationText.TryRead(text, row.Style.LabourInHours, out double minutes) ? minutes
            : Unusable<double>(row, field, true, ReasonCode.BadNumber, "", "");
    }

    /// <summary>First and last day on which it may have been built; another cell counts as unknown.</summary>
    public static (DateOnly From, DateOnly To)? Made(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (MadeOnText.TryRead(text, row.Style.Dates, out DateOnly from, out DateOnly to))
        {
            return (from, to);
        }

        if (row.Style.CountsDays && SpreadsheetDay.TryRead(text, out DateTime counted))
        {
            return (DateOnly.FromDateTime(counted), DateOnly.FromDateTime(counted));
        }

        if (!EmptyMark.Is(text))
        {
            row.Skip(field, ReasonCode.BadDate);
        }

        return null;
    }

    /// <summary>Outcome by the table of words, else by what a word of status says of it; another word counts as unknown and is returned beside it.</summary>
    public static (string Outcome, string? Own) Outcome(this MappedRow row, MappedField field, WordSets words)
    {
        string? typed = row.Word(field);
        string? known = words.Outcomes.Find(typed) ?? words.Statuses.FindWhole(typed) switch
        {
            Analysis.Vocabulary.JobStatus.Closed => Analysis.Vocabulary.Outcome.Fixed,
            Analysis.Vocabulary.JobStatus.Canceled => Analysis.Vocabulary.Outcome.Declined,
            Analysis.Vocabulary.JobStatus.WaitingForPart => Analysis.Vocabulary.Outcome.PartOrdered,
            Analysis.Vocabulary.JobStatus.Open => Analysis.Vocabulary.Outcome.Unknown,
            _ => null,
        };
        if (typed is not null && known is null)
        {
            row.Skip(field, ReasonCode.UnknownWord);
        }

        return (known ?? Analysis.Vocabulary.Outcome.Unknown, known is null ? typed : null);
    }

    /// <summary>Our word for the cell's; another word counts as unknown.</summary>
    public static string? Known(this MappedRow row, MappedField field, SynonymTable words)
    {
        string? typed = row.Word(field);
        string? known = words.Find(typed);
        if (typed is not null && known is null)
        {
            row.Skip(field, ReasonCode.UnknownWord);
        }

        return known;
    }

    /// <summary>Size class; another word counts as unknown.</summary>
    public static string? SizeClass(this MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> text = row.Span(field);
        string? size = SizeClassText.Read(text);
        if (size is null && !EmptyMark.Is(text))
        {
            row.Skip(field, ReasonCode.UnknownWord);
        }

        return size;
    }

    /// <summary>True when the field's cell is a number cell of a workbook, which has a point for its decimals whatever the file's style.</summary>
    public static bool IsNumberCell(this MappedRow row, MappedField field) => field.Columns.Length == 1 && row.Cells.Form(field.Columns[0]) is CellForm.Number or CellForm.DamagedNumber;

    private static T? Unusable<T>(MappedRow row, MappedField field, bool lesser, string code, string what, string suggestion)
        where T : struct
    {
        if (lesser)
        {
            row.Skip(field, code);
        }
        else
        {
            string where = field.Columns.Length > 0 ? row.Place(field.Columns[0]) : $"the column map's fixed value of {field.Name}";
            row.Fail(field, code, $"{char.ToUpperInvariant(where[0])}{where[1..]}: {what}.", suggestion);
        }

        return null;
    }
}
