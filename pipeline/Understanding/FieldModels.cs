namespace PartsSignal.Pipeline.Understanding;

/// <summary>Weights of the evidence for columns: one sum for all fields, and one for each field added to it.</summary>
/// <param name="Common">What holds for every field.</param>
/// <param name="Fields">By name of the field, whatever the kind.</param>
internal sealed record FieldModels(TreeModel Common, IReadOnlyDictionary<string, TreeModel> Fields)
{
    private const double Thousandths = 1000;

    /// <summary>Log odds of a column that holds nothing.</summary>
    public const double Never = -9;

    /// <summary>Log odds that a column gives a field.</summary>
    public double Odds(string field, ReadOnlySpan<byte> levels) =>
        (Common.Score(levels) + (Fields.TryGetValue(field, out TreeModel? own) ? own.Score(levels) : 0)) / Thousandths;

    /// <summary>Log odds of every field of a kind, by column and field.</summary>
    /// <param name="table">The table.</param>
    /// <param name="kind">The kind it is taken for.</param>
    /// <param name="levels">Levels of a column and field.</param>
    public double[,] Odds(TableEvidence table, string kind, Func<int, string, byte[]> levels)
    {
        IReadOnlyList<string> fields = KindFields.Of(kind);
        var odds = new double[table.Columns.Count, fields.Count];
        for (int c = 0; c < table.Columns.Count; c++)
        {
            for (int f = 0; f < fields.Count; f++)
            {
                odds[c, f] = table.Columns[c].IsFilled ? Odds(fields[f], levels(c, fields[f])) : Never;
            }
        }

        return odds;
    }
}
