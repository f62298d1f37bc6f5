using CsvHelper;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Which general words a header is made of: one that names something, a day, money, a place. They hold in any office, so
/// that a header nobody has seen whole still says something.
/// </summary>
internal static class HeaderTokens
{
    private static readonly Dictionary<string, ulong> Classes = new(StringComparer.Ordinal);

    static HeaderTokens()
    {
        var names = new List<string>();
        using var csv = CsvReader.FromText(WordTable.ReadDefault("header-tokens.csv"), new CsvReaderOptions { Separator = ',' });
        while (csv.Read())
        {
            foreach (string word in csv.GetString("words").Split('|'))
            {
                Classes[word] = Classes.GetValueOrDefault(word) | (1UL << names.Count);
            }

            names.Add(csv.GetString("class"));
        }

        Names = names;
    }

    /// <summary>Names of the classes, 64 at most.</summary>
    public static IList<string> Names { get; }

    /// <summary>How many levels there are.</summary>
    public static int Count => Names.Count + 1;

    /// <summary>The classes of a header's words, as bits.</summary>
    public static ulong Of(string header)
    {
        ulong all = 0;
        foreach (string word in PlainHeader.Words(header))
        {
            all |= Classes.GetValueOrDefault(word);
        }

        return all;
    }

    /// <summary>Whether a header has a word of a class.</summary>
    public static bool Says(string header, string name) => (Of(header) & (1UL << Names.IndexOf(name))) != 0;

    /// <summary>Whether a header has words of one class and of no other.</summary>
    public static bool SaysOnly(string header, string name) => Of(header) == 1UL << Names.IndexOf(name);

    /// <summary>Levels of a column: for each class whether its header has a word of it, and last, whether the whole header is one known word.</summary>
    public static byte[] Levels(ColumnSample column)
    {
        string header = column.Repeats > 1 && HeaderText.Numbered(column.Name) is { } numbered ? numbered.Stem : column.Name;
        ulong classes = Of(header);
        bool isOneWord = classes != 0 && PlainHeader.Words(header).Count == 1;
        return [.. Enumerable.Range(0, Names.Count).Select(i => ((classes >> i) & 1) == 1 ? FeatureList.Top : (byte)0), isOneWord ? FeatureList.Top : (byte)0];
    }
}
