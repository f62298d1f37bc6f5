using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Shows what a cell looks like without what it says.</summary>
internal static class MaskedCells
{
    private const double Possible = 0.03;

    /// <summary>The cell with every letter an x and every digit a 0.</summary>
    public static string Mask(string cell) => string.Concat(cell.Take(40).Select(c => char.IsLetter(c) ? 'x' : char.IsDigit(c) ? '0' : c));

    /// <summary>True when a column may hold names, addresses, phone numbers or e-mails: by what it is taken for, its header, or its cells.</summary>
    public static bool IsPersonal(ColumnSample column, TableReading reading)
    {
        int at = reading.Table.Sample.Columns.ToList().IndexOf(column);
        if (reading.Choice is { } choice && at >= 0)
        {
            for (int f = 0; f < choice.Fields.Count; f++)
            {
                if (FieldCatalog.Get(choice.Kind, choice.Fields[f]).Personal && FieldChoice.Chance(choice.Odds[at, f]) >= Possible)
                {
                    return true;
                }
            }
        }

        double[] header = HeaderLexicon.Shipped.Match(column.Name);
        IEnumerable<string> personal = ["customer_name", "phone", "address", "email", "technician", "~user"];
        return personal.Any(p => header[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(p)] >= 0.6) || CellFeatures.LooksPersonal(column);
    }
}
