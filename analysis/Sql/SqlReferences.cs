using System.Text.RegularExpressions;

namespace PartsSignal.Analysis.Sql;

/// <summary>
/// Finds the tables that a query reads: what follows <c>from</c> or <c>join</c>, less the query's own common table
/// expressions. A test holds it to the engine's parser for every file.
/// </summary>
internal static partial class SqlReferences
{
    /// <summary>Tables that a query reads, in ordinal order.</summary>
    /// <param name="sql">One select statement.</param>
    public static IReadOnlyList<string> TablesRead(string sql)
    {
        string[] tokens = [.. Token().Matches(sql).Where(m => !m.Groups["skip"].Success).Select(m => m.Value)];
        var own = new HashSet<string>(StringComparer.Ordinal);
        var read = new SortedSet<string>(StringComparer.Ordinal);
        for (int i = 0; i + 1 < tokens.Length; i++)
        {
            if (tokens[i + 1] == "as" && OpensQuery(tokens, i + 2))
            {
                own.Add(NameBefore(tokens, i));
            }
            else if (StartsSource(tokens, i) && IsName(tokens[i + 1]) && tokens.ElementAtOrDefault(i + 2) != "(")
            {
                read.Add(tokens[i + 1].Trim('"'));
            }
        }

        read.ExceptWith(own);
        return [.. read];
    }

    // "is distinct from x" compares, it reads no table.
    private static bool StartsSource(string[] tokens, int i) =>
        tokens[i] == "join" || (tokens[i] == "from" && !(i > 1 && tokens[i - 1] == "distinct" && tokens[i - 2] is "is" or "not"));

    private static bool OpensQuery(string[] tokens, int i)
    {
        i += tokens.ElementAtOrDefault(i) == "not" ? 1 : 0;
        i += tokens.ElementAtOrDefault(i) == "materialized" ? 1 : 0;
        return tokens.ElementAtOrDefault(i) == "(";
    }

    // "name as (" or "name(column, ...) as (".
    private static string NameBefore(string[] tokens, int i)
    {
        if (tokens[i] == ")")
        {
            i = Array.LastIndexOf(tokens, "(", i) - 1;
        }

        return i >= 0 ? tokens[i] : "";
    }

    private static bool IsName(string token) => token[0] == '"' || char.IsAsciiLetter(token[0]) || token[0] == '_';

    [GeneratedRegex("""(?<skip>--[^\n]*|'(?:[^']|'')*'|\s+)|"[^"]+"|[A-Za-z_][A-Za-z0-9_]*|.""", RegexOptions.Singleline)]
    private static partial Regex Token();
}
