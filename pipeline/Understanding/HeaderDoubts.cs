namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns whose cells would do for several things, and whose header does not say which: a later day may be a visit or an
/// invoice instead of the closing day, rising numbers may number the rows instead of the jobs, small numbers may be anything.
/// A person is asked, and the column is the default.
/// </summary>
internal static class HeaderDoubts
{
    private const int Wholly = 14;
    private const int Plainly = 10;
    private const int Hardly = 4;

    /// <summary>Whether the header leaves open what the cells leave open too.</summary>
    /// <param name="table">The table.</param>
    /// <param name="choice">Which column gives which field.</param>
    /// <param name="field">Place of the field; a column gives it.</param>
    public static bool IsUnclear(TableEvidence table, FieldChoice choice, int field)
    {
        int column = choice.Columns[field];
        int Named(string name) => FieldLevels.HeaderLevel(table.Columns[column], name);

        // A header that plainly names something else.
        int other = FieldLevels.OtherLevel(table.Columns[column]);
        return (other >= Wholly && other >= Named(choice.Fields[field]) + Hardly) || choice.Fields[field] switch
        {
            "closed_on" => Named("closed_on") < Plainly,
            "job_id" when choice.Kind == "jobs" => CellDoubts.AreRowNumbers(table, column) && (Named("job_id") < Plainly || Named("~row") >= Named("job_id")),
            "job_id" => CellDoubts.AreRowNumbers(table, column),
            "quantity" => Named("quantity") < Hardly || Named("~row") >= Named("quantity"),
            "model" => table.Columns[column].Links.Count == 0 && Named("model") < Hardly,

            // Who drives a van goes with it. Where nobody is named, only another table can tell that it is one, and not a shelf.
            "van" when choice.Kind == "jobs" => choice.ColumnOf("technician") is var technician and >= 0 ? CellDoubts.AreUnrelated(table, column, technician) : table.Columns[column].Links.Count == 0,
            _ => false,
        };
    }
}
