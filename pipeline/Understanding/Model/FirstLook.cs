using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>What each table would be as each kind, before the tables are looked at together.</summary>
internal sealed class FirstLook
{
    private readonly Dictionary<(TableSample Table, string Kind), FieldChoice> _choices = [];

    /// <summary>Scores every table as every kind.</summary>
    public FirstLook(IEnumerable<TableSample> tables, FieldEvidence evidence, FieldModels models)
    {
        Evidence = evidence;
        foreach (TableSample table in tables)
        {
            foreach (string kind in SourceFields.Kinds)
            {
                _choices.Add((table, kind), FieldChoice.Of(kind, models.Odds(table, kind, (c, f) => evidence.Of(table, c, kind, f))));
            }
        }
    }

    /// <summary>What it rests on.</summary>
    public FieldEvidence Evidence { get; }

    /// <summary>The best columns for a table, were it of the kind.</summary>
    public FieldChoice Choice(TableSample table, string kind) => _choices[(table, kind)];

    /// <summary>Levels for deciding the kind.</summary>
    public byte[] KindLevels(TableSample table)
    {
        var list = new FeatureList();
        foreach (string kind in SourceFields.Kinds)
        {
            FieldChoice choice = Choice(table, kind);
            double sum = 0;
            int read = 0;
            for (int f = 0; f < choice.Fields.Count; f++)
            {
                int c = choice.Columns[f];
                double chance = c < 0 ? 0 : FieldChoice.Chance(choice.Odds[c, f]);
                list.Share($"{kind}.{choice.Fields[f]}", chance);
                sum += chance;
                read += c < 0 ? 0 : 1;
            }

            int filled = Math.Max(1, table.Columns.Count(c => c.Filled > 0));
            list.Share($"{kind} read", (double)read / filled);
            list.Size($"{kind} sum", sum);
            IReadOnlyList<string> essential = EssentialFields.Of(kind);
            list.Share($"{kind} essential", essential.Count(e => choice.ColumnOf(e) >= 0) / (double)essential.Count);
        }

        return [.. list.Levels, .. Evidence.Of(table)];
    }
}
