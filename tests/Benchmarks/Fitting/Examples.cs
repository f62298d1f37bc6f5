using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>One column as one field.</summary>
/// <param name="Field">The field.</param>
/// <param name="Levels">The evidence.</param>
/// <param name="IsRight">Whether the column gives the field.</param>
/// <param name="Weight">How much it counts.</param>
internal sealed record Example(string Field, byte[] Levels, bool IsRight, double Weight)
{
    /// <summary>A row for every column and field of each table's kind.</summary>
    public static IReadOnlyList<Example> Of(TruthSet set, double weight, Func<TableSample, int, string, string, byte[]> levels)
    {
        var examples = new List<Example>();
        foreach (TruthTable table in set.Tables.Where(t => t.Kind != "none"))
        {
            double share = weight / Twins(set, table);
            foreach (string field in SourceFields.Of(table.Kind)!)
            {
                for (int c = 0; c < table.Sample.Columns.Count; c++)
                {
                    if (table.Sample.Columns[c].Filled > 0)
                    {
                        examples.Add(new Example(field, levels(table.Sample, c, table.Kind, field), table.IsRight(table.Sample.Columns[c], field), share));
                    }
                }
            }
        }

        return examples;
    }

    /// <summary>How many tables of a set are the same log in other years.</summary>
    public static int Twins(TruthSet set, TruthTable table) =>
        set.Tables.Count(t => t == table || (t.Kind == table.Kind && t.Sample.File == table.Sample.File && ShopRelations.IsTwin(t.Sample, table.Sample)));
}
