namespace PartsSignal.Pipeline.Reading;

/// <summary>One of the first rows of a table, kept for deciding how to read the rest.</summary>
/// <param name="Line">Where it starts, from 1.</param>
/// <param name="Cells">Its cells, as they are.</param>
/// <param name="Forms">Their forms.</param>
/// <param name="IsSheet">True for a row of a workbook's sheet.</param>
internal sealed record SampleRow(int Line, IReadOnlyList<string> Cells, IReadOnlyList<CellForm> Forms, bool IsSheet)
{
    /// <summary>Cells that are not blank.</summary>
    public int Filled => Cells.Count(c => !string.IsNullOrWhiteSpace(c));

    /// <summary>Copies the current row of a reader.</summary>
    public static SampleRow From(TableReader table)
    {
        int n = table.Row.Count;
        var cells = new string[n];
        var forms = new CellForm[n];
        for (int i = 0; i < n; i++)
        {
            cells[i] = table.Row[i].ToString();
            forms[i] = table.Row.Form(i);
        }

        return new SampleRow(table.Line, cells, forms, table is WorkbookTable);
    }

    /// <summary>The first rows of a reader; rows that cannot be cut into cells are left out.</summary>
    public static IReadOnlyList<SampleRow> Take(TableReader table, int most)
    {
        var rows = new List<SampleRow>();
        while (rows.Count < most && table.Read())
        {
            if (table.Fault is null && !table.Row.IsBlank)
            {
                rows.Add(From(table));
            }
        }

        return rows;
    }
}
