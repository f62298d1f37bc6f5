using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the tables of one shop say of each other: a column that shares values with what seems to be a job number is one.</summary>
internal sealed class SecondLook
{
    private const double Negligible = -5;
    private const double AboutAsLikely = 2;
    private const double OneBetter = 0.1;
    private static readonly string[] RowNumbers = ["job_id", "order_id"];
    private static readonly string[] PartNumbers = ["part", "other_part", "old_part", "new_part", "alias"];
    private static readonly int[] Telling = [.. new[] { "jobs", "job_parts", "part_orders", "parts", "models", "units" }.Select(k => ((IList<string>)KindModels.Names).IndexOf(k))];

    // What a machine or a part is stays the same in all its rows; what was done to it does not.
    private static readonly string[] Anchors = ["serial", "model", "part"];
    private readonly FirstLook _first;
    private readonly IReadOnlyList<double[]> _kinds;
    private readonly Dictionary<string, double>[][] _meanings;

    /// <summary>Looks at the tables together.</summary>
    /// <param name="first">The tables by themselves.</param>
    /// <param name="kinds">Chances of each table's kinds, by <see cref="KindModels.Names"/>.</param>
    public SecondLook(FirstLook first, IReadOnlyList<double[]> kinds)
    {
        (_first, _kinds) = (first, kinds);
        _meanings = [.. first.Shop.Tables.Select((t, i) => t.Columns.Select((_, c) => Meanings(i, c)).ToArray())];
    }

    /// <summary>The tables by themselves.</summary>
    public FirstLook First => _first;

    /// <summary>Chances of each table's kinds by itself, by <see cref="KindModels.Names"/>.</summary>
    public IReadOnlyList<double[]> Kinds => _kinds;

    /// <summary>What the other columns of the table and of the shop add to a column giving a field.</summary>
    public byte[] Of(int table, int column, string kind, string field)
    {
        FieldChoice choice = _first.Choice(table, kind);
        TableEvidence own = _first.Shop.Tables[table];
        int f = ((IList<string>)choice.Fields).IndexOf(field);
        double others = FieldModels.Never, rival = FieldModels.Never;
        for (int c = 0; c < own.Columns.Count; c++)
        {
            others = c == column ? others : Math.Max(others, choice.Odds[c, f]);
        }

        for (int g = 0; g < choice.Fields.Count; g++)
        {
            rival = g == f ? rival : Math.Max(rival, choice.Odds[column, g]);
        }

        (double same, double other) = Linked(own.Columns[column], field);
        var list = new FeatureList();
        list.Level("odds", Level(choice.Odds[column, f]));
        list.Level("odds_of_others", Level(others));
        list.Level("odds_of_rival", Level(rival));
        list.Level("lead_of_column", Level(choice.Odds[column, f] - others));
        list.Level("lead_of_field", Level(choice.Odds[column, f] - rival));
        list.Share("linked_same", same);
        list.Share("linked_other", other);
        list.Share("same_header_same", SameHeader(table, own.Columns[column].Header, field));
        list.Flag("is_essential", FieldCatalog.Telling(kind).Contains(field));
        list.Flag("links", own.Columns[column].Links.Count > 0);
        list.Flag("links_to_key", own.Columns[column].Links.Any(l => l.IsKey));
        foreach (string anchor in Anchors)
        {
            int at = field == anchor ? -1 : choice.ColumnOf(anchor);
            bool known = at >= 0 && at != column;
            list.Level("determined by " + anchor, known ? own.Columns[at].Determines[column] : 0);
            list.Level("determines " + anchor, known ? own.Columns[column].Determines[at] : 0);
        }

        return [.. list.Levels];
    }

    /// <summary>Log odds of every field of a kind, by column and field.</summary>
    public double[,] Odds(int table, string kind, TreeModel model)
    {
        FieldChoice first = _first.Choice(table, kind);
        double[,] odds = (double[,])first.Odds.Clone();
        for (int c = 0; c < odds.GetLength(0); c++)
        {
            for (int f = 0; f < odds.GetLength(1); f++)
            {
                odds[c, f] += odds[c, f] <= Negligible ? 0 : model.Score(Of(table, c, kind, first.Fields[f])) / 1000.0;
                if (odds[c, f] > Negligible && CellDoubts.Most(_first.Shop.Tables[table], c, first.Fields[f], kind) is < 1 and var most)
                {
                    odds[c, f] = Math.Min(odds[c, f], FieldChoice.LogOdds(most));
                }
            }
        }

        PreferFirstKey(table, first.Fields, odds);
        return odds;
    }

    // Of two columns that would do as the number of the row, the first is its own; what follows are numbers of other things.
    private void PreferFirstKey(int table, IReadOnlyList<string> fields, double[,] odds)
    {
        IReadOnlyList<ColumnEvidence> columns = _first.Shop.Tables[table].Columns;
        int isKey = ColumnFeatures.Place("is_key");
        for (int f = 0; f < fields.Count; f++)
        {
            if (columns.Count == 0 || !RowNumbers.Contains(fields[f]))
            {
                continue;
            }

            double best = Enumerable.Range(0, columns.Count).Max(c => odds[c, f]);
            int own = Enumerable.Range(0, columns.Count).FirstOrDefault(c => odds[c, f] > 0 && odds[c, f] >= best - AboutAsLikely && columns[c].Levels[isKey] > 0, -1);
            if (own >= 0)
            {
                odds[own, f] = best + Math.Min(best - odds[own, f], OneBetter);
            }
        }
    }

    /// <summary>Levels for deciding the kind, with the kinds of the tables it is related to.</summary>
    public IReadOnlyList<byte[]> KindLevels(int table)
    {
        IReadOnlyList<TableEvidence> tables = _first.Shop.Tables;
        int[] targets = [.. tables[table].Columns.SelectMany(c => c.Links).Where(l => l.IsKey).Select(l => l.Table).Distinct()];
        int[] sources = [.. Enumerable.Range(0, tables.Count).Where(t => tables[t].Columns.Any(c => c.Links.Any(l => l.IsKey && l.Table == table)))];
        int[] others = [.. Enumerable.Range(0, tables.Count).Where(t => t != table && !tables[t].IsTwin(tables[table]))];
        IReadOnlyList<FeatureList> lists = _first.Lists(table);
        for (int own = 0; own < lists.Count; own++)
        {
            lists[own].Share("first", _kinds[table][own]);
            lists[own].Share("first_lead", 0.5 + ((_kinds[table][own] - _kinds[table].Where((_, i) => i != own).Max()) / 2));
            lists[own].Share("in_others", Most(others, own));
            foreach (int k in Telling)
            {
                lists[own].Share("points_to " + KindModels.Names[k], Most(targets, k));
                lists[own].Share("pointed_at_by " + KindModels.Names[k], Most(sources, k));
            }
        }

        return [.. lists.Select(l => l.Levels.ToArray())];
    }

    private double Most(int[] tables, int kind) => tables.Select(t => _kinds[t][kind]).DefaultIfEmpty(0).Max();

    private (double Same, double Other) Linked(ColumnEvidence column, string field)
    {
        double same = 0, other = 0;
        foreach (ColumnLink link in column.Links)
        {
            foreach ((string meaning, double chance) in _meanings[link.Table][link.Column])
            {
                double worth = Math.Min(chance, link.Percent / 100.0);
                if (meaning == field || (PartNumbers.Contains(meaning) && PartNumbers.Contains(field)))
                {
                    same = Math.Max(same, worth);
                }
                else
                {
                    other = Math.Max(other, worth);
                }
            }
        }

        return (same, other);
    }

    // One heading means one thing in one shop.
    private double SameHeader(int table, string header, string field)
    {
        double best = 0;
        for (int t = 0; t < _meanings.Length; t++)
        {
            for (int c = 0; t != table && c < _meanings[t].Length; c++)
            {
                best = _first.Shop.Tables[t].Columns[c].Header == header ? Math.Max(best, _meanings[t][c].GetValueOrDefault(field)) : best;
            }
        }

        return best;
    }

    // The chance that a column means a field, over all kinds its table may be of.
    private Dictionary<string, double> Meanings(int table, int column)
    {
        var meanings = new Dictionary<string, double>(StringComparer.Ordinal);
        for (int k = 0; k < FieldCatalog.Kinds.Count; k++)
        {
            FieldChoice choice = _first.Choice(table, FieldCatalog.Kinds[k]);
            for (int f = 0; _kinds[table][k] >= 0.05 && f < choice.Fields.Count; f++)
            {
                meanings[choice.Fields[f]] = meanings.GetValueOrDefault(choice.Fields[f]) + (_kinds[table][k] * FieldChoice.Chance(choice.Odds[column, f]));
            }
        }

        return meanings;
    }

    private static int Level(double odds) => (int)Math.Round((odds + 5) * FeatureList.Top / 10);
}
