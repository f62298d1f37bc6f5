namespace PartsSignal.Pipeline.Cleaning;

/// <summary>Collects what the amounts of one file say about their decimal mark.</summary>
internal sealed class NumberStyleVote
{
    private int _point;
    private int _comma;
    private int _open;

    /// <summary>Amounts in which the mark matters: 1.250 may be more than a thousand or little more than one.</summary>
    public int Ambiguous => _open;

    /// <summary>Amounts that can only have a decimal point.</summary>
    public int Point => _point;

    /// <summary>Amounts that can only have a decimal comma.</summary>
    public int Comma => _comma;

    /// <summary>True when both styles occur.</summary>
    public bool IsMixed => _point > 0 && _comma > 0;

    /// <summary>Looks at one cell: the last mark with other than three digits behind it is the decimal mark.</summary>
    public void Add(ReadOnlySpan<char> cell)
    {
        int point = cell.LastIndexOf('.');
        int comma = cell.LastIndexOf(',');
        if (point < 0 && comma < 0)
        {
            return;
        }

        if (point >= 0 && comma >= 0)
        {
            _point += point > comma ? 1 : 0;
            _comma += comma > point ? 1 : 0;
            return;
        }

        int at = Math.Max(point, comma);
        int digits = 0;
        for (int i = at + 1; i < cell.Length && char.IsAsciiDigit(cell[i]); i++)
        {
            digits++;
        }

        bool leadsWithZero = at == 1 && cell[0] == '0';
        if (digits is > 0 and not 3 || (digits == 3 && leadsWithZero))
        {
            _point += point >= 0 ? 1 : 0;
            _comma += comma >= 0 ? 1 : 0;
        }
        else if (digits == 3 && at <= 3)
        {
            _open++;
        }
    }

    /// <summary>The style the most amounts demand, or null if none demands one.</summary>
    public NumberStyle? Decide() => _point + _comma == 0 ? null : _comma > _point ? NumberStyle.Comma : NumberStyle.Point;
}

/// <summary>Which mark stands before the decimals; one style holds for a whole file.</summary>
internal enum NumberStyle
{
    /// <summary>1,234.50</summary>
    Point,

    /// <summary>1.234,50</summary>
    Comma,
}
