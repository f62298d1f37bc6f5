using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the numbers of the same rows say of columns with pieces and prices.</summary>
internal static class PieceColumns
{
    private const double NearlyAll = 0.95;
    private const double Most = 0.8;
    private const int FewestRows = 3;
    private const int MostPieces = 200;
    private const double Cent = 0.011;

    /// <summary>Whether a column is the price of one piece, and another that price times the pieces. Only rows of more than one piece tell.</summary>
    public static bool IsPriceOf(ColumnSample unit, ColumnSample pieces, ColumnSample total)
    {
        int told = 0, fits = 0, ones = 0, same = 0;
        for (int i = 0; i < total.Numbers.Length; i++)
        {
            if (unit.Numbers[i] is { } u && pieces.Numbers[i] is { } n && total.Numbers[i] is { } t && u > 0 && n > 0)
            {
                (told, fits) = n > 1 ? (told + 1, fits + (Math.Abs((u * n) - t) <= Cent ? 1 : 0)) : (told, fits);
                (ones, same) = n == 1 ? (ones + 1, same + (Math.Abs(u - t) <= Cent ? 1 : 0)) : (ones, same);
            }
        }

        return told >= FewestRows && fits >= NearlyAll * told && same >= NearlyAll * ones;
    }

    /// <summary>Whether a column counts pieces ordered, of which another counts those delivered.</summary>
    public static bool AreOrdered(ColumnSample ordered, ColumnSample delivered)
    {
        if (!ordered.IsNumbers || ordered.IsAmounts)
        {
            return false;
        }

        int both = 0, same = 0, more = 0;
        for (int i = 0; i < ordered.Numbers.Length; i++)
        {
            if (ordered.Numbers[i] is { } o && delivered.Numbers[i] is { } d)
            {
                both++;
                same += o == d ? 1 : 0;
                more += o > d ? 1 : 0;
            }
        }

        return more > 0 && same + more == both && same >= Most * both;
    }

    /// <summary>Whether a column counts a part of another's pieces, such as those still to come or sent back: often 0, and never more.</summary>
    public static bool IsPartOf(ColumnSample rest, ColumnSample all)
    {
        if (!all.IsNumbers || all.IsAmounts)
        {
            return false;
        }

        int told = 0, none = 0;
        for (int i = 0; i < all.Numbers.Length; i++)
        {
            if (all.Numbers[i] is { } ordered && (rest.Numbers[i] ?? 0) is var left)
            {
                if (ordered <= 0 || ordered > MostPieces || left > ordered)
                {
                    return false;
                }

                (told, none) = (told + 1, none + (left == 0 ? 1 : 0));
            }
        }

        return told >= FewestRows && none >= Most * told;
    }

    /// <summary>Whether a column counts whole pieces, and has fractions only in rows that charge for work: hours of labor among the parts of a bill.</summary>
    public static bool CountWorkToo(TableSample table, ColumnSample pieces)
    {
        if (!pieces.IsNumbers)
        {
            return false;
        }

        int whole = 0, hours = 0, fractions = 0;
        for (int i = 0; i < pieces.Numbers.Length; i++)
        {
            if (pieces.Numbers[i] is { } n and not 0)
            {
                bool isWhole = n == Math.Truncate(n);
                bool isCharge = (!isWhole || Math.Abs(n) <= MostPieces) && table.Columns.Any(c => c.Numbers[i] is null && c.Days[i] is null && ChargeWords.IsCharge(c.Cells[i]));
                (whole, hours, fractions) = isCharge ? (whole, hours + 1, fractions) : (whole + (isWhole ? 1 : 0), hours, fractions + (isWhole ? 0 : 1));
            }
        }

        return hours >= FewestRows && whole >= FewestRows && fractions <= (1 - NearlyAll) * (whole + fractions);
    }
}
