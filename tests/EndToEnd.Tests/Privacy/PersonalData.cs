using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.EndToEnd.Tests.Privacy;

/// <summary>Everything personal in a shop's files, and a search for it: names, phone numbers, e-mail and street addresses, card numbers.</summary>
internal sealed partial class PersonalData
{
    private const int PhoneDigits = 9;
    private readonly HashSet<string> _names = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _phones = new(StringComparer.Ordinal);
    private readonly HashSet<string> _emails = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _streets = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, string[]> _cells = new(StringComparer.Ordinal);

    /// <summary>How many different ones there are.</summary>
    public int Count => _names.Count + _phones.Count + _emails.Count + _streets.Count;

    /// <summary>All that the files of a shop hold in their columns of customers, and what the generator put into free text.</summary>
    public static PersonalData Of(string shop)
    {
        var all = new PersonalData();
        ShopSettings settings = ShopFile.Load(shop);
        foreach (SourceFile source in SourceFile.Find(shop, settings))
        {
            all.AddColumns(source, settings.Limits);
        }

        foreach (string line in File.ReadLines(Path.Combine(shop, "truth", "planted.csv")).Skip(1))
        {
            all.Add(line[(line.IndexOf(',', StringComparison.Ordinal) + 1)..].Trim('"'));
        }

        return all;
    }

    /// <summary>Adds one, told by its looks.</summary>
    public void Add(string text)
    {
        _cells.Clear();
        text = text.Trim();
        string digits = string.Concat(text.Where(char.IsAsciiDigit));
        if (text.Contains('@', StringComparison.Ordinal))
        {
            _emails.Add(text);
        }
        else if (Street().Match(text) is { Success: true } street)
        {
            _streets.Add(street.Value);
        }
        else if (digits.Length >= PhoneDigits)
        {
            _phones.Add(digits);
        }
        else if (text.Contains(' ', StringComparison.Ordinal))
        {
            _names.Add(text);
        }
    }

    /// <summary>Those that stand in a text. None goes over the end of a line or of a cell.</summary>
    public IEnumerable<string> FoundIn(string text)
    {
        foreach (string cell in text.Split(['\t', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
        {
            // The same cells stand in many files and rows.
            if (!_cells.TryGetValue(cell, out string[]? found))
            {
                found = [.. InCell(cell)];
                _cells.Add(cell, found);
            }

            foreach (string one in found)
            {
                yield return one;
            }
        }
    }

    private IEnumerable<string> InCell(string text)
    {
        foreach (Match email in Email().Matches(text))
        {
            if (_emails.Contains(email.Value))
            {
                yield return email.Value;
            }
        }

        foreach (Match number in Number().Matches(text))
        {
            string digits = string.Concat(number.Value.Where(char.IsAsciiDigit));
            if (_phones.Contains(digits))
            {
                yield return number.Value;
            }
        }

        foreach (string words in WordRuns(text))
        {
            if (_names.Contains(words) || _streets.Contains(words))
            {
                yield return words;
            }
        }
    }

    // Runs of two, three and four words, as names and streets are.
    private static IEnumerable<string> WordRuns(string text)
    {
        foreach (Match line in Line().Matches(text))
        {
            (int At, int End)[] words = [.. Word().Matches(line.Value).Select(w => (line.Index + w.Index, line.Index + w.Index + w.Length))];
            for (int first = 0; first < words.Length; first++)
            {
                for (int last = first + 1; last < Math.Min(words.Length, first + 4); last++)
                {
                    yield return text[words[first].At..words[last].End];
                }
            }
        }
    }

    private void AddColumns(SourceFile source, ReadingLimits limits)
    {
        var scan = ContentScan.Read(source.File, limits, CancellationToken.None);

        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, limits);
        var map = new FieldMap(source.File.Name, source.Map, table.Header);
        int[] columns = [.. new[] { "customer_name", "phone", "address", "email" }.SelectMany(f => map.Field(f).Columns)];
        while (table.Reader.Read())
        {
            foreach (int column in columns)
            {
                Add(table.Reader.Row[column].ToString());
            }
        }
    }

    [GeneratedRegex(@"^\d{1,4} \p{L}[\p{L}']*( \p{L}[\p{L}']*){0,2}")]
    private static partial Regex Street();

    [GeneratedRegex(@"[\w.+%-]+@[\w.-]+\w")]
    private static partial Regex Email();

    [GeneratedRegex(@"(?<!\w)\+?\d(?:[ ()./-]{0,2}\d){8,18}(?!\w)")]
    private static partial Regex Number();

    [GeneratedRegex(@"[^\r\n\t<>]+")]
    private static partial Regex Line();

    [GeneratedRegex(@"[\p{L}\p{Nd}'-]+")]
    private static partial Regex Word();
}
