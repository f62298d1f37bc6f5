using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>A field of which it is not certain enough which column gives it.</summary>
/// <param name="Field">The field.</param>
/// <param name="Chosen">The column taken if nobody answers, or -1.</param>
/// <param name="Columns">The columns it could be, likeliest first.</param>
/// <param name="Weight">How much an answer matters: larger first.</param>
internal sealed record ColumnDoubt(string Field, int Chosen, IReadOnlyList<int> Columns, double Weight)
{
    private const int MostColumns = 4;

    // Chosen on shops that were held out, where each column wrong in silence counts as ten questions. A column that is read
    // is asked about below the first, below the second where answers hang on it; a rival above the third; a column that may
    // give a missing field above the fourth, above the fifth where answers hang on it.
    private const double Sure = 0.8;
    private const double SureEssential = 0.85;
    private const double Rival = 0.1;

    // Only what a person has said is beyond it.
    private const double Settled = 0.9998;
    private const double Possible = 0.4;

    // What the cells speak against is no surer than this, whatever its header.
    private const double Contradicted = 0.5;
    private const double PossibleEssential = 0.03;
    private static readonly string[] Days = ["opened_on", "closed_on", "ordered_on", "received_on"];

    /// <summary>The doubts of a table, by field.</summary>
    /// <param name="choice">Its columns.</param>
    /// <param name="table">Its evidence.</param>
    public static IEnumerable<ColumnDoubt> Of(FieldChoice choice, TableEvidence table)
    {
        for (int f = 0; f < choice.Fields.Count; f++)
        {
            bool essential = FieldCatalog.Telling(choice.Kind).Contains(choice.Fields[f]);
            int chosen = choice.Columns[f];
            double chance = chosen < 0 ? 0 : FieldChoice.Chance(choice.Odds[chosen, f]);
            double least = chosen >= 0 ? Rival : essential ? PossibleEssential : Possible;
            int[] others = [.. Enumerable.Range(0, choice.Odds.GetLength(0))
                .Where(c => c != chosen && FieldChoice.Chance(choice.Odds[c, f]) >= least && IsFree(choice, c, f) && !(chosen >= 0 && IsOutranked(table, choice, chosen, c, f)) && !(Days.Contains(choice.Fields[f]) && CellDoubts.Are(table, c, choice.Fields[f])))
                .OrderByDescending(c => choice.Odds[c, f]).ThenBy(c => c)];
            others = chosen < 0 && others.Length == 0 ? [.. LostFields.Candidates(table, choice, f)] : others;
            bool doubted = chosen < 0 ? others.Length > 0
                : chance < (essential ? SureEssential : Sure) || (essential && others.Length > 0) || (chance < Settled && (CellDoubts.Are(table, chosen, choice.Fields[f]) || HeaderDoubts.IsUnclear(table, choice, f)));
            if (doubted)
            {
                // Someone who rejects the likeliest column should find the right one among the others.
                int[] columns = [.. others.Prepend(chosen).Where(c => c >= 0).Concat(LostFields.Candidates(table, choice, f)).Distinct().Take(MostColumns)];
                double sure = chosen >= 0 && CellDoubts.Are(table, chosen, choice.Fields[f]) ? Math.Min(chance, Contradicted) : chance;
                yield return new ColumnDoubt(choice.Fields[f], chosen, columns, (essential ? 2 : 1) * (chosen < 0 ? FieldChoice.Chance(choice.Odds[others[0], f]) + 0.3 : 1.3 - sure));
            }
        }
    }

    // The number that identifies the rows outranks others: for jobs the one that no two rows share, for a price list the one
    // that other tables use, for lines the one that is found in another table.
    private static bool IsOutranked(TableEvidence table, FieldChoice choice, int chosen, int rival, int field)
    {
        bool Has(int column, string feature) => table.Columns[column].Levels[ColumnFeatures.Place(feature)] > 0;
        bool Leads(int column) => table.Columns[column].Links.Any(l => l.IsKey);
        return (choice.Kind, choice.Fields[field]) switch
        {
            ("jobs", "job_id") or ("part_orders", "order_id") => Has(chosen, "is_key") && !Has(rival, "is_key") && Leads(rival),
            ("parts", "part") => Has(chosen, "is_key") && Has(chosen, "pointed_at_by") && !Has(rival, "pointed_at_by"),
            (_, "part" or "job_id") => Leads(chosen) && !Leads(rival),
            _ => false,
        };
    }

    // A column that surely gives another field is no candidate.
    private static bool IsFree(FieldChoice choice, int column, int field)
    {
        int other = Array.IndexOf(choice.Columns, column);
        return other < 0 || choice.Odds[column, field] > choice.Odds[column, other] - 2;
    }
}
