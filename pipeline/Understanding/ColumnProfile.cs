using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the cells of one column look like; shares are of the filled cells, 0 to 1.</summary>
internal sealed partial class ColumnProfile
{
    private const int MostDistinct = 200;
    private readonly HashSet<string> _distinct = new(StringComparer.OrdinalIgnoreCase);
    private int _dates, _numbers, _wholes, _durations, _flags, _emails, _phones, _codes, _models, _texts, _damaged;

    /// <summary>Starts an empty profile.</summary>
    /// <param name="name">Name of the column.</param>
    /// <param name="index">Its position from 0.</param>
    public ColumnProfile(string name, int index)
    {
        Name = name;
        Index = index;
    }

    /// <summary>Name of the column.</summary>
    public string Name { get; }

    /// <summary>Its position from 0.</summary>
    public int Index { get; }

    /// <summary>Cells looked at.</summary>
    public int Cells { get; private set; }

    /// <summary>Cells with content.</summary>
    public int Filled { get; private set; }

    /// <summary>What dates say of their order.</summary>
    public DateOrderVote Dates { get; } = new();

    /// <summary>What amounts say of their decimal mark.</summary>
    public NumberStyleVote Numbers { get; } = new();

    /// <summary>Different cells, at most some hundred.</summary>
    public IReadOnlyCollection<string> Distinct => _distinct;

    /// <summary>True when there are more different cells than were kept.</summary>
    public bool ManyDistinct => _distinct.Count >= MostDistinct;

    /// <summary>Cells that a spreadsheet damaged, were they codes.</summary>
    public int Damaged => _damaged;

    /// <summary>Share that reads as a date.</summary>
    public double DateShare => Share(_dates);

    /// <summary>Share that reads as an amount.</summary>
    public double NumberShare => Share(_numbers);

    /// <summary>Share that reads as a whole number.</summary>
    public double WholeShare => Share(_wholes);

    /// <summary>Share that reads as a working time.</summary>
    public double DurationShare => Share(_durations);

    /// <summary>Share that reads as yes or no.</summary>
    public double FlagShare => Share(_flags);

    /// <summary>Share that holds an e-mail address.</summary>
    public double EmailShare => Share(_emails);

    /// <summary>Share that is a phone number.</summary>
    public double PhoneShare => Share(_phones);

    /// <summary>Share that looks like a code: no more than two words, with a digit.</summary>
    public double CodeShare => Share(_codes);

    /// <summary>Share that holds a word of letters and digits as model numbers have.</summary>
    public double ModelShare => Share(_models);

    /// <summary>Share of three words or more.</summary>
    public double TextShare => Share(_texts);

    /// <summary>Looks at one cell.</summary>
    public void Add(ReadOnlySpan<char> cell, CellForm form)
    {
        Cells++;
        cell = cell.Trim();
        if (EmptyMark.Is(cell))
        {
            return;
        }

        Filled++;
        bool date = form == CellForm.Date || DateText.TryDay(cell, DateOrder.DayFirst, out _) || DateText.TryDay(cell, DateOrder.MonthFirst, out _);
        bool number = MoneyText.TryRead(cell, NumberStyle.Point, out _) || MoneyText.TryRead(cell, NumberStyle.Comma, out _);
        _dates += date ? 1 : 0;
        _numbers += number ? 1 : 0;
        _wholes += QuantityText.TryRead(cell, NumberStyle.Point, out _) ? 1 : 0;
        _durations += DurationText.TryRead(cell, false, out _) ? 1 : 0;
        _flags += YesNoText.TryRead(cell, out _) ? 1 : 0;
        _emails += cell.Contains('@') ? 1 : 0;
        _damaged += form is CellForm.DamagedNumber or CellForm.Date || DamagedCode.Is(cell) ? 1 : 0;
        if (date)
        {
            Dates.Add(cell);
        }
        else if (number && form == CellForm.Text)
        {
            Numbers.Add(cell);
        }

        AddWords(cell, date);
    }

    private void AddWords(ReadOnlySpan<char> cell, bool date)
    {
        int blanks = cell.Count(' ');
        bool digit = cell.ContainsAnyInRange('0', '9');
        _texts += blanks >= 2 && !date ? 1 : 0;
        _codes += digit && blanks <= 1 && cell.Length <= 30 && !cell.Contains('@') ? 1 : 0;
        if (digit)
        {
            string text = cell.ToString();
            _phones += !date && Phone().IsMatch(text) ? 1 : 0;
            _models += Model().IsMatch(text) ? 1 : 0;
        }

        if (_distinct.Count < MostDistinct)
        {
            _distinct.Add(cell.ToString());
        }
    }

    private double Share(int count) => Filled == 0 ? 0 : (double)count / Filled;

    [GeneratedRegex(@"^(?:\+|\(|0)(?:[ ().-]{0,2}\d){7,14}$|^\d{3}-\d{4}$|^\d{3}[ .-]\d{3}[ .-]\d{4}$", RegexOptions.CultureInvariant)]
    private static partial Regex Phone();

    [GeneratedRegex(@"(?<![\w-])(?=[A-Za-z0-9./-]{5,16}(?![\w-]))[A-Za-z]{1,4}[-.]?\d{2,6}[A-Za-z0-9./-]*", RegexOptions.CultureInvariant)]
    private static partial Regex Model();
}
