using System.Text;
using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>Looks for plants in texts, whatever the case, the diacritics and the blanks between digits.</summary>
internal sealed partial class PlantSearch
{
    private const int FewestDigits = 8;
    private const int ShortestTyped = 7;
    private readonly Dictionary<int, string> _wholes = [];
    private readonly Dictionary<string, List<int>> _words = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<int>> _digits = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<int>> _typed = new(StringComparer.Ordinal);
    private readonly List<(Regex Code, int Plant)> _codes = [];
    private readonly HashSet<string> _asTyped;
    private readonly Dictionary<string, int[]> _cells = new(StringComparer.Ordinal);

    /// <summary>Prepares for a shop's plants.</summary>
    public PlantSearch(IReadOnlyList<(Plant Plant, string Cell)> plants)
    {
        _asTyped = [.. plants.Select(p => p.Plant.Typed)];
        for (int i = 0; i < plants.Count; i++)
        {
            foreach (string word in plants[i].Plant.Words)
            {
                Add(_words, TextFold.Fold(word), i);
            }

            if (plants[i].Plant.Digits.Length >= FewestDigits)
            {
                Add(_digits, plants[i].Plant.Digits[^FewestDigits..], i);
            }

            foreach (string code in plants[i].Plant.Codes)
            {
                IEnumerable<string> characters = code.Where(char.IsLetterOrDigit).Select(c => c.ToString());
                _codes.Add((new Regex(@"(?<![\p{L}\p{N}_])" + string.Join(@"[^\p{L}\p{N}\t]{0,3}", characters) + @"(?![\p{L}\p{N}_])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant), i));
            }

            // Short ones are whole keys; of the others the end tells.
            string typed = Squeezed(plants[i].Plant.Typed);
            if (typed.Length >= ShortestTyped)
            {
                Add(_typed, typed[^ShortestTyped..], i);
                _wholes[i] = typed;
            }
        }
    }

    /// <summary>Those found, each once, with what was found.</summary>
    public IEnumerable<(int Plant, string Line)> FoundIn(string text)
    {
        foreach (string line in text.Split('\n'))
        {
            foreach (int plant in line.Split('\t').SelectMany(InCell))
            {
                yield return (plant, line.Length > 300 ? line[..300] : line);
            }
        }
    }

    // The same cells stand in many files and rows.
    private int[] InCell(string cell)
    {
        if (!_cells.TryGetValue(cell, out int[]? plants))
        {
            plants = Identifier().IsMatch(cell) && !_asTyped.Contains(cell) ? [] : [.. Words(cell), .. Digits(cell), .. Typed(cell), .. Codes(cell)];
            _cells.Add(cell, plants);
        }

        return plants;
    }

    private IEnumerable<int> Words(string cell)
    {
        // Glued words too: every beginning within a run of letters that one of the words has.
        foreach (Match run in Letters().Matches(cell))
        {
            string folded = TextFold.Fold(run.Value);
            if (folded.Length is > 2 and < 60)
            {
                foreach ((string word, List<int> plants) in Candidates(folded))
                {
                    if (word.Length < 5 ? folded == word : folded.Contains(word, StringComparison.Ordinal))
                    {
                        foreach (int plant in plants)
                        {
                            yield return plant;
                        }
                    }
                }
            }
        }
    }

    private IEnumerable<KeyValuePair<string, List<int>>> Candidates(string folded)
    {
        Dictionary<string, List<int>>.AlternateLookup<ReadOnlySpan<char>> words = _words.GetAlternateLookup<ReadOnlySpan<char>>();
        for (int start = 0; start < folded.Length; start++)
        {
            for (int length = 2; length <= Math.Min(20, folded.Length - start); length++)
            {
                if (words.TryGetValue(folded.AsSpan(start, length), out string? word, out List<int>? plants))
                {
                    yield return new KeyValuePair<string, List<int>>(word, plants);
                }
            }
        }
    }

    // As typed, whatever stands between letters and digits.
    private IEnumerable<int> Typed(string cell)
    {
        string squeezed = Squeezed(cell);
        Dictionary<string, List<int>>.AlternateLookup<ReadOnlySpan<char>> typed = _typed.GetAlternateLookup<ReadOnlySpan<char>>();
        for (int end = ShortestTyped; end <= squeezed.Length; end++)
        {
            if (typed.TryGetValue(squeezed.AsSpan(end - ShortestTyped, ShortestTyped), out List<int>? plants))
            {
                foreach (int plant in plants)
                {
                    if (squeezed.AsSpan(0, end).EndsWith(_wholes[plant]))
                    {
                        yield return plant;
                    }
                }
            }
        }
    }

    private IEnumerable<int> Codes(string cell) => _codes.Where(c => c.Code.IsMatch(cell)).Select(c => c.Plant);

    private static string Squeezed(string text) => string.Concat(TextFold.Fold(text).Where(c => char.IsLetterOrDigit(c) || char.IsSurrogate(c)));

    private IEnumerable<int> Digits(string cell)
    {
        // A share or a rate with all its decimals is no number of anybody.
        foreach (Match run in Numbers().Matches(Fraction().Replace(cell, " ")))
        {
            var digits = new StringBuilder();
            foreach (char c in run.Value)
            {
                if (TextFold.Digit(c) is >= 0 and int digit)
                {
                    digits.Append(digit);
                }
            }

            for (int i = 0; i + FewestDigits <= digits.Length; i++)
            {
                foreach (int plant in _digits.GetValueOrDefault(digits.ToString(i, FewestDigits), []))
                {
                    yield return plant;
                }
            }
        }
    }

    private static void Add(Dictionary<string, List<int>> index, string key, int plant)
    {
        if (!index.TryGetValue(key, out List<int>? plants))
        {
            index.Add(key, plants = []);
        }

        plants.Add(plant);
    }

    // What stands in an identifier of the program stands there by chance.
    [GeneratedRegex(@"\A(?=.*[0-9])(?=.*[a-z])(?=.*[A-Z])[A-Za-z0-9_.]{12}\z")]
    private static partial Regex Identifier();

    [GeneratedRegex(@"[\p{L}\p{M}\p{Cf}]+")]
    private static partial Regex Letters();

    [GeneratedRegex(@"(?<![\d.])\d{1,6}\.\d{9,}(?![\d.])")]
    private static partial Regex Fraction();

    [GeneratedRegex(@"(?<![\d.])\p{Nd}(?:[^\p{L}\p{N}\t]{0,3}\p{Nd}){7,}")]
    private static partial Regex Numbers();
}
