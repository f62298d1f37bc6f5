using System.Collections.Concurrent;
using CsvHelper;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Small dictionaries of what people write under certain headings, in seven languages.</summary>
internal sealed class ContentWords
{
    private readonly Dictionary<string, int> _whole = new(StringComparer.Ordinal);
    private readonly List<(string Stem, int Classes)> _stems = [];
    private readonly ConcurrentDictionary<string, int> _known = new(StringComparer.Ordinal);

    private ContentWords(string table)
    {
        var classes = new List<string>();
        using var csv = CsvReader.FromText(table, new CsvReaderOptions { Separator = ',' });
        while (csv.Read())
        {
            string name = csv.GetString("class");
            int at = classes.IndexOf(name);
            if (at < 0)
            {
                at = classes.Count;
                classes.Add(name);
            }

            foreach (string word in csv.GetString("words").Split('|'))
            {
                if (word[^1] == '*')
                {
                    _stems.Add((word[..^1], 1 << at));
                }
                else
                {
                    _whole[word] = _whole.GetValueOrDefault(word) | (1 << at);
                }
            }
        }

        Classes = classes;
    }

    /// <summary>The shipped table.</summary>
    public static ContentWords Shipped { get; } = new(WordTable.ReadDefault("content-words.csv"));

    /// <summary>Names of the dictionaries.</summary>
    public IReadOnlyList<string> Classes { get; }

    /// <summary>The dictionaries in which a cell has a word, as bits.</summary>
    public int Find(string cell)
    {
        int classes = 0;
        foreach (string word in Tokenizer.Split(cell).Take(12))
        {
            if (!_known.TryGetValue(word, out int of))
            {
                string plain = string.Concat(word.Select(PlainLetter.Of));
                of = _whole.GetValueOrDefault(plain);
                foreach ((string stem, int c) in _stems)
                {
                    of |= plain.StartsWith(stem, StringComparison.Ordinal) ? c : 0;
                }

                if (_known.Count < 50_000)
                {
                    _known.TryAdd(word, of);
                }
            }

            classes |= of;
        }

        return classes;
    }
}
