using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>The levels that speak for and against a column giving a field, were its table of a kind.</summary>
/// <param name="fields">Fields of the lexicon that gave the header levels.</param>
internal sealed class FieldLevels(IReadOnlyList<string> fields)
{
    private const int HeaderLevels = 6;
    private static readonly int[] NoFields = [.. HeaderLexicon.Shipped.Fields.Index().Where(f => f.Item[0] == '~').Select(f => f.Index)];
    private readonly Dictionary<string, int> _places = fields.Select((f, i) => (f, i)).ToDictionary(f => f.f, f => f.i, StringComparer.Ordinal);
    private readonly Dictionary<string, bool[]> _own = FieldCatalog.Kinds.ToDictionary(k => k, k => fields.Select(f => KindFields.Of(k).Contains(f)).ToArray(), StringComparer.Ordinal);
    private readonly bool[] _none = [.. fields.Select(f => f[0] == '~')];

    /// <summary>The levels, 0 to 15; room is left for more.</summary>
    public byte[] Of(TableEvidence table, int column, string kind, string field, int more = 0)
    {
        ColumnEvidence own = table.Columns[column];
        var levels = new byte[own.Levels.Length + table.Levels.Length + FieldCatalog.Kinds.Count + HeaderLevels + 1 + ContentFits.Count + more];
        own.Levels.CopyTo(levels, 0);
        table.Levels.CopyTo(levels, own.Levels.Length);
        int at = own.Levels.Length + table.Levels.Length;
        foreach (string k in FieldCatalog.Kinds)
        {
            levels[at++] = k == kind ? FeatureList.Top : (byte)0;
        }

        int place = _places.GetValueOrDefault(field, -1);
        byte header = LevelOf(own, place);
        byte others = 0, rival = 0, elsewhere = 0, none = 0;
        for (int c = 0; place >= 0 && c < table.Columns.Count; c++)
        {
            others = c == column ? others : Math.Max(others, LevelOf(table.Columns[c], place));
        }

        bool[] ofKind = _own[kind];
        for (int f = 0; f < _none.Length; f++)
        {
            byte level = LevelOf(own, f);
            (none, rival, elsewhere) = _none[f] ? (Math.Max(none, level), rival, elsewhere)
                : f == place ? (none, rival, elsewhere)
                : ofKind[f] ? (none, Math.Max(rival, level), elsewhere)
                : (none, rival, Math.Max(elsewhere, level));
        }

        levels[at++] = header;
        levels[at++] = rival;
        levels[at++] = elsewhere;
        levels[at++] = none;
        levels[at++] = others;
        levels[at++] = (byte)((FeatureList.Top + header - Math.Max(rival, none) + 1) / 2);
        ContentClass content = ContentFits.ClassOf(field);
        levels[at++] = own.Fits[(int)content];
        levels[at + (int)content] = FeatureList.Top;
        return levels;
    }

    /// <summary>How well a column's header names a field or, where the name begins with <c>~</c>, something else; 0 to 15.</summary>
    public static byte HeaderLevel(ColumnEvidence column, string name) => LevelOf(column, ((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(name));

    /// <summary>How well a column's header names something that is no field: a total, a note, a planned day; 0 to 15.</summary>
    public static byte OtherLevel(ColumnEvidence column) => NoFields.Select(f => LevelOf(column, f)).Max();

    // Fields that came later are unknown to evidence gathered before.
    private static byte LevelOf(ColumnEvidence column, int place) => place >= 0 && place < column.HeaderLevels.Length ? column.HeaderLevels[place] : (byte)0;
}
