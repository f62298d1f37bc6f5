namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// What a model is about, as lines of text: its needs, its members, its kinds of complaint. One row of a value mapping
/// carries it past the mappings, which keep nothing themselves.
/// </summary>
internal sealed class Outline
{
    /// <summary>Parts the pieces of a line, and those of a number's name. No need, type or word holds it.</summary>
    public const char Separator = '\u001f';

    /// <summary>Sections of the outline.</summary>
    public const string NeedSection = "need", MemberSection = "member", LevelSection = "level", BackOffSection = "back_off_need";

    private readonly Dictionary<string, List<string>> _sections = new(StringComparer.Ordinal);

    /// <summary>Reads the lines.</summary>
    public Outline(IEnumerable<string> lines)
    {
        foreach (string line in lines)
        {
            int end = line.IndexOf(Separator, StringComparison.Ordinal);
            if (!_sections.TryGetValue(line[..end], out List<string>? items))
            {
                _sections[line[..end]] = items = [];
            }

            items.Add(line[(end + 1)..]);
        }
    }

    /// <summary>Items of a section in their order; empty if there is none.</summary>
    public IReadOnlyList<string> this[string section] => _sections.TryGetValue(section, out List<string>? items) ? items : [];

    /// <summary>Section with the outcomes of a table of weights.</summary>
    public static string OutcomesOf(string table) => "outcome of " + table;

    /// <summary>Section with the kinds of complaint that a table's second reading tells apart.</summary>
    public static string KindsOf(string table) => "kind of " + table;

    /// <summary>Section with the outcomes each type of appliance can have in a table, as type and outcome.</summary>
    public static string AllowedOf(string table) => "allowed in " + table;

    /// <summary>Places of the outcomes a type can have; every outcome for a type never seen.</summary>
    public int[] Allowed(string table, string type)
    {
        IReadOnlyList<string> outcomes = this[OutcomesOf(table)];
        Dictionary<string, int> places = NeedList.Places(outcomes);
        string own = type + Separator;
        int[] allowed = [.. this[AllowedOf(table)].Where(l => l.StartsWith(own, StringComparison.Ordinal)).Select(l => places[l[own.Length..]])];
        return allowed.Length > 0 ? allowed : [.. Enumerable.Range(0, outcomes.Count)];
    }

    /// <summary>A line, or the name of a number.</summary>
    public static string Line(params ReadOnlySpan<string> pieces) => string.Join(Separator, pieces!);
}
