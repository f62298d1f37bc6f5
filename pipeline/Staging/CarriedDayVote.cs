using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Recognizes a log that writes each day only once, in its first row: most rows have no day, the first row has one, and the
/// days rise or fall all the way down. A row without a day then takes the day above it.
/// </summary>
internal sealed class CarriedDayVote
{
    /// <summary>The remark on such a file.</summary>
    public const string Remark = "The day of the call stands only in the first row of each day; the rows below it take that day.";

    private const int Rows = 2_000;
    private const int FewestRows = 10;
    private const int FewestDays = 3;
    private const double NearlyAll = 0.95;
    private readonly List<string> _days = [];
    private int _rows;
    private bool _beginsWithDay;

    /// <summary>What is assumed for the files whose rows take the day above them, or null if there are none.</summary>
    public static string? Sentence(IReadOnlyList<StagedFile> staged)
    {
        string[] files = [.. staged.Where(s => s.Remarks.Contains(Remark)).Select(s => s.SourceFile).Distinct(StringComparer.Ordinal)];
        return files.Length == 0 ? null : $"In {string.Join(", ", files)}, the day of the call stands only in the first row of each day, so the rows below it take that day.";
    }

    /// <summary>Takes the next row's cell.</summary>
    public void Add(ReadOnlySpan<char> cell)
    {
        if (_rows == Rows)
        {
            return;
        }

        bool isEmpty = cell.IsWhiteSpace();
        _beginsWithDay |= _rows == 0 && !isEmpty;
        _rows++;
        if (!isEmpty)
        {
            _days.Add(cell.ToString());
        }
    }

    /// <summary>Whether rows take the day above them.</summary>
    /// <param name="order">Order of dates.</param>
    public bool Decide(DateOrder order)
    {
        if (!_beginsWithDay || _rows < FewestRows || _days.Count < FewestDays || _days.Count * 2 >= _rows)
        {
            return false;
        }

        DateOnly[] days = [.. _days.Select(d => DateText.TryDay(d, order, out DateOnly day) ? day : (DateOnly?)null).OfType<DateOnly>()];
        (DateOnly First, DateOnly Next)[] pairs = [.. days.Zip(days.Skip(1))];
        return days.Length >= NearlyAll * _days.Count
            && (pairs.Count(p => p.First <= p.Next) >= NearlyAll * pairs.Length || pairs.Count(p => p.First >= p.Next) >= NearlyAll * pairs.Length);
    }
}
