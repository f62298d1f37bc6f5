using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Which column gives which field, were a table of a kind.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Columns">For each field of the kind its column, or -1.</param>
/// <param name="Odds">Log odds by column and field.</param>
internal sealed record FieldChoice(string Kind, int[] Columns, double[,] Odds)
{
    // Chance from which on a column is taken, and for a field without which an answer is lost: reading it wrong is asked
    // about, not reading it is silent. Any other field is better left out, and asked about, than read wrong.
    private const double Usual = 0.5;
    private const double Essential = 0.1;

    /// <summary>Fields of the kind.</summary>
    public IReadOnlyList<string> Fields => KindFields.Of(Kind);

    /// <summary>Decides all columns at once.</summary>
    public static FieldChoice Of(string kind, double[,] odds)
    {
        IReadOnlyList<string> fields = KindFields.Of(kind);
        int columns = odds.GetLength(0);
        var gain = new double[fields.Count, columns];
        for (int f = 0; f < fields.Count; f++)
        {
            double least = LogOdds(FieldCatalog.Telling(kind).Contains(fields[f]) ? Essential : Usual);
            for (int c = 0; c < columns; c++)
            {
                gain[f, c] = Math.Max(0, odds[c, f] - least);
            }
        }

        int[] chosen = Assignment.Best(gain);
        MoveOnlyNumber(fields, chosen);
        return new FieldChoice(kind, chosen, odds);
    }

    // The only number on an order line is the part's, whoever's number it is.
    private static void MoveOnlyNumber(IReadOnlyList<string> fields, int[] chosen)
    {
        int part = ((IList<string>)fields).IndexOf("part");
        int other = ((IList<string>)fields).IndexOf("other_part");
        if (part >= 0 && other >= 0 && chosen[part] < 0 && chosen[other] >= 0)
        {
            (chosen[part], chosen[other]) = (chosen[other], -1);
        }
    }

    /// <summary>Log odds of a chance.</summary>
    public static double LogOdds(double chance) => Math.Log(chance / (1 - chance));

    /// <summary>Chance of log odds.</summary>
    public static double Chance(double odds) => 1 / (1 + Math.Exp(-odds));

    /// <summary>Column of a field, or -1.</summary>
    public int ColumnOf(string field) => ((IList<string>)Fields).IndexOf(field) is var at and >= 0 ? Columns[at] : -1;
}
