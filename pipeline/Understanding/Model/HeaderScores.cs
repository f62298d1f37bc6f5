using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>What the headers of a table say, column by column and field by field.</summary>
internal sealed class HeaderScores
{
    private readonly HeaderLexicon _lexicon;
    private readonly double[][] _scores;

    /// <summary>Matches every header.</summary>
    public HeaderScores(HeaderLexicon lexicon, TableSample table)
    {
        _lexicon = lexicon;
        _scores = [.. table.Columns.Select(c => lexicon.Match(WithoutNumber(c)))];
    }

    /// <summary>How well a column's header names a field, 0 to 1.</summary>
    public double Of(int column, string field) => Place(field) is var at and >= 0 ? _scores[column][at] : 0;

    /// <summary>The best score of other columns for the field.</summary>
    public double BestOfOthers(int column, string field)
    {
        double best = 0;
        int at = Place(field);
        for (int i = 0; at >= 0 && i < _scores.Length; i++)
        {
            best = i == column ? best : Math.Max(best, _scores[i][at]);
        }

        return best;
    }

    /// <summary>The best score of a column for the kind's other fields, for fields of other kinds only, and for what is no field.</summary>
    public (double Rival, double Elsewhere, double NoField) Others(int column, string kind, string field)
    {
        IReadOnlyList<string> own = SourceFields.Of(kind)!;
        double rival = 0, elsewhere = 0, none = 0;
        for (int f = 0; f < _lexicon.Fields.Count; f++)
        {
            string name = _lexicon.Fields[f];
            double score = _scores[column][f];
            if (name[0] == '~')
            {
                none = Math.Max(none, score);
            }
            else if (name != field && own.Contains(name))
            {
                rival = Math.Max(rival, score);
            }
            else if (name != field)
            {
                elsewhere = Math.Max(elsewhere, score);
            }
        }

        return (rival, elsewhere, none);
    }

    private int Place(string field) => ((List<string>)_lexicon.Fields).IndexOf(field);

    private static string WithoutNumber(ColumnSample column) =>
        column.Repeats > 1 && Inspecting.HeaderText.Numbered(column.Name) is { } numbered ? numbered.Stem : column.Name;
}
