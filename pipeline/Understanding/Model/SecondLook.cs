using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>What the tables of one shop say of each other: a column that shares values with what seems to be a job number is one.</summary>
internal sealed class SecondLook
{
    private static readonly string[][] Alike = [["part", "other_part", "old_part", "new_part", "alias"]];
    private readonly FirstLook _first;
    private readonly Dictionary<TableSample, double[]> _kinds;
    private readonly Dictionary<ColumnSample, Dictionary<string, double>> _meanings = [];

    /// <summary>Looks at the tables together.</summary>
    /// <param name="first">The tables by themselves.</param>
    /// <param name="kinds">Chances of each table's kinds, by <see cref="KindModels.Names"/>.</param>
    public SecondLook(FirstLook first, Dictionary<TableSample, double[]> kinds)
    {
        (_first, _kinds) = (first, kinds);
        foreach (TableSample table in kinds.Keys)
        {
            for (int c = 0; c < table.Columns.Count; c++)
            {
                _meanings.Add(table.Columns[c], Meanings(table, c));
            }
        }
    }

    /// <summary>Levels of a column and field: those of the first look, and what the shop's other columns add.</summary>
    public byte[] Of(TableSample table, int column, string kind, string field)
    {
        FieldChoice choice = _first.Choice(table, kind);
        int f = ((IList<string>)choice.Fields).IndexOf(field);
        double others = FieldModels.Never, rival = FieldModels.Never;
        for (int c = 0; c < table.Columns.Count; c++)
        {
            others = c == column ? others : Math.Max(others, choice.Odds[c, f]);
        }

        for (int g = 0; g < choice.Fields.Count; g++)
        {
            rival = g == f ? rival : Math.Max(rival, choice.Odds[column, g]);
        }

        double same = 0, other = 0, header = 0;
        foreach (ShopRelations.Link link in _first.Evidence.Relations.Shares(table.Columns[column]))
        {
            foreach ((string meaning, double chance) in _meanings[link.Column])
            {
                if (meaning == field || Array.Exists(Alike, a => a.Contains(meaning) && a.Contains(field)))
                {
                    same = Math.Max(same, Math.Min(chance, link.Share));
                }
                else
                {
                    other = Math.Max(other, Math.Min(chance, link.Share));
                }
            }
        }

        // One heading means one thing in one shop.
        foreach ((ColumnSample sample, Dictionary<string, double> meanings) in _meanings)
        {
            if (sample != table.Columns[column] && sample.Name.Equals(table.Columns[column].Name, StringComparison.OrdinalIgnoreCase))
            {
                header = Math.Max(header, meanings.GetValueOrDefault(field));
            }
        }

        var list = new FeatureList();
        list.Level("first_odds", Level(choice.Odds[column, f]));
        list.Level("first_odds_of_others", Level(others));
        list.Level("first_odds_of_rival", Level(rival));
        list.Flag("first_choice", choice.Columns[f] == column);
        list.Share("linked_same", same);
        list.Share("linked_other", other);
        list.Share("same_header_same", header);
        return [.. _first.Evidence.Of(table, column, kind, field), .. list.Levels];
    }

    /// <summary>Levels for deciding the kind, with the kinds of the tables it is related to.</summary>
    public byte[] KindLevels(TableSample table)
    {
        var list = new FeatureList();
        ShopRelations relations = _first.Evidence.Relations;
        TableSample[] targets = [.. table.Columns.SelectMany(relations.PointsTo).Select(l => l.Table).Distinct()];
        TableSample[] sources = [.. table.Columns.SelectMany(relations.PointedAtBy).Select(l => l.Table).Distinct()];
        for (int k = 0; k < KindModels.Names.Count; k++)
        {
            list.Share("points_to " + KindModels.Names[k], targets.Select(t => _kinds[t][k]).DefaultIfEmpty(0).Max());
            list.Share("pointed_at_by " + KindModels.Names[k], sources.Select(t => _kinds[t][k]).DefaultIfEmpty(0).Max());
            list.Share("first " + KindModels.Names[k], _kinds[table][k]);
            list.Share("others " + KindModels.Names[k], _kinds.Where(t => t.Key != table && !ShopRelations.IsTwin(t.Key, table)).Select(t => t.Value[k]).DefaultIfEmpty(0).Max());
        }

        return [.. _first.KindLevels(table), .. list.Levels];
    }

    // The chance that a column means a field, over all kinds its table may be of.
    private Dictionary<string, double> Meanings(TableSample table, int column)
    {
        var meanings = new Dictionary<string, double>(StringComparer.Ordinal);
        for (int k = 0; k < SourceFields.Kinds.Count; k++)
        {
            double kind = _kinds[table][k];
            if (kind < 0.05)
            {
                continue;
            }

            FieldChoice choice = _first.Choice(table, SourceFields.Kinds[k]);
            for (int f = 0; f < choice.Fields.Count; f++)
            {
                double chance = kind * FieldChoice.Chance(choice.Odds[column, f]);
                meanings[choice.Fields[f]] = meanings.GetValueOrDefault(choice.Fields[f]) + chance;
            }
        }

        return meanings;
    }

    private static int Level(double odds) => (int)Math.Round((odds + 5) * FeatureList.Top / 10);
}
