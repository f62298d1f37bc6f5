using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the cells of one column look like, by themselves.</summary>
internal static partial class CellFeatures
{
    /// <summary>Adds the evidence.</summary>
    public static void Add(ColumnSample column, FeatureList list)
    {
        string[] cells = [.. column.Texts];
        double Share(Func<string, bool> holds) => cells.Length == 0 ? 0 : (double)cells.Count(holds) / cells.Length;
        list.Share("filled", column.Cells.Length == 0 ? 0 : (double)column.Filled / column.Cells.Length);
        list.Count("values", column.Values.Count);
        list.Share("distinct", column.Values.Filled == 0 ? 0 : (double)column.Values.Count / column.Values.Filled);
        int[] counts = Counts(column);
        list.Share("top_value", cells.Length == 0 ? 0 : (double)counts.FirstOrDefault() / cells.Length);
        list.Share("top_three", cells.Length == 0 ? 0 : (double)counts.Take(3).Sum() / cells.Length);
        list.Share("date", column.DateShare);
        list.Share("timed", column.Filled == 0 ? 0 : (double)column.Timed / column.Filled);
        Numbers(column, list);
        list.Share("yes_no", Share(c => YesNoText.TryRead(c, out _)));
        list.Share("email", Share(c => c.Contains('@')));
        list.Share("phone", Share(c => Phone().IsMatch(c)));
        list.Share("clock", Share(c => Clock().IsMatch(c)));
        list.Share("duration", Share(c => !char.IsAsciiDigit(c[^1]) && DurationText.TryRead(c, false, out _)));
        list.Share("percent", Share(c => c[^1] == '%'));
        list.Share("guid", Share(c => Guid().IsMatch(c)));
        list.Share("stamp", Share(c => c.Length >= 15 && char.IsAsciiDigit(c[0]) && c.Contains(':')));
        Shapes(cells, list);
        Words(cells, list);
    }

    /// <summary>True when the cells look like names of people, addresses, phone numbers or e-mails, or are free text that may hold some.</summary>
    public static bool LooksPersonal(ColumnSample column)
    {
        string[] cells = [.. column.Texts];
        bool Often(Func<string, bool> holds, double share) => cells.Length > 0 && cells.Count(holds) >= share * cells.Length;
        return Often(c => c.Contains('@'), 0.1) || Often(Phone().IsMatch, 0.3) || Often(Person().IsMatch, 0.5) || Often(House().IsMatch, 0.5)
            || Often(c => c.Count(x => x == ' ') >= 3, 0.3);
    }

    private static int[] Counts(ColumnSample column)
    {
        var counts = new int[column.Distinct];
        foreach (int code in column.Codes)
        {
            if (code >= 0)
            {
                counts[code]++;
            }
        }

        Array.Sort(counts);
        Array.Reverse(counts);
        return counts;
    }

    private static void Numbers(ColumnSample column, FeatureList list)
    {
        double[] numbers = [.. column.Numbers.OfType<double>().Order()];
        double Share(Func<double, bool> holds) => numbers.Length == 0 ? 0 : (double)numbers.Count(holds) / numbers.Length;
        string[] texts = [.. column.Cells.Where((_, i) => column.Numbers[i] is not null)];
        double TextShare(Func<string, bool> holds) => texts.Length == 0 ? 0 : (double)texts.Count(holds) / texts.Length;
        bool some = column.NumberShare >= 0.3;
        list.Share("number", column.NumberShare);
        list.Share("whole", some ? Share(n => n == Math.Truncate(n)) : 0);
        list.Share("two_decimals", some ? TextShare(t => Decimals(t) == 2) : 0);
        list.Share("more_decimals", some ? TextShare(t => Decimals(t) is 1 or > 2) : 0);
        list.Share("negative", some ? Share(n => n < 0) : 0);
        list.Share("zero", some ? Share(n => n == 0) : 0);
        list.Share("one", some ? Share(n => n == 1) : 0);
        list.Share("to_ten", some ? Share(n => n is >= 0 and <= 10) : 0);
        list.Share("to_forty", some ? Share(n => n is >= 0 and <= 40) : 0);
        list.Share("fives", some ? Share(n => n != 0 && n % 5 == 0) : 0);
        list.Share("year", some ? Share(n => n is >= 1950 and <= 2060 && n == Math.Truncate(n)) : 0);
        list.Size("median", some ? numbers[numbers.Length / 2] : 0);
        list.Size("largest", some ? numbers[(int)((numbers.Length - 1) * 0.98)] : 0);
        list.Size("spread", some && numbers[numbers.Length / 10] > 0 ? numbers[(numbers.Length - 1) * 9 / 10] / numbers[numbers.Length / 10] : 0);
        list.Share("leading_zero", column.Filled == 0 ? 0 : column.Texts.Count(t => t.Length > 3 && t[0] == '0' && char.IsAsciiDigit(t[1])) / (double)column.Filled);
        list.Share("rising", Rising(column));
    }

    // How often a number (or the number at a cell's end) is larger than the one of the row above.
    private static double Rising(ColumnSample column)
    {
        int pairs = 0, up = 0;
        decimal? before = null;
        foreach (string cell in column.Texts.Take(600))
        {
            int start = cell.Length;
            while (start > 0 && char.IsAsciiDigit(cell[start - 1]) && cell.Length - start < 18)
            {
                start--;
            }

            decimal? now = start == cell.Length ? null : decimal.Parse(cell.AsSpan(start), System.Globalization.CultureInfo.InvariantCulture);
            if (now is not null && before is not null)
            {
                pairs++;
                up += now > before ? 1 : 0;
            }

            before = now;
        }

        return pairs < 3 ? 0 : (double)up / pairs;
    }

    private static int Decimals(string text)
    {
        int at = text.AsSpan().LastIndexOfAny('.', ',');
        int digits = 0;
        for (int i = at + 1; at >= 0 && i < text.Length && char.IsAsciiDigit(text[i]); i++)
        {
            digits++;
        }

        return digits;
    }

    private static void Shapes(string[] cells, FeatureList list)
    {
        double Share(Func<string, bool> holds) => cells.Length == 0 ? 0 : (double)cells.Count(holds) / cells.Length;
        list.Share("code", Share(c => c.Length is >= 4 and <= 30 && !c.Contains(' ') && c.AsSpan().ContainsAnyInRange('0', '9') && c.Any(char.IsLetter)));
        list.Share("digits", Share(c => c.Length >= 4 && !c.AsSpan().ContainsAnyExceptInRange('0', '9')));
        list.Share("marked_digits", Share(c => c.Length >= 5 && !c.AsSpan().ContainsAnyExcept("0123456789.-/ ") && c.AsSpan().ContainsAny(".-/ ")));
        list.Share("letters", Share(c => c.All(char.IsLetter)));
        list.Share("short_letters", Share(c => c.Length <= 3 && c.All(char.IsLetter)));
        list.Share("upper", Share(c => c.Any(char.IsLetter) && !c.Any(char.IsLower)));
        list.Share("lower_first", Share(c => char.IsLower(c[0])));
        list.Share("marks", Share(c => c.AsSpan(0, Math.Min(c.Length, 30)).IndexOfAny("-./_") >= 0 && !c.Contains(' ')));
        double mean = cells.Length == 0 ? 0 : cells.Average(c => c.Length);
        list.Size("length", mean);
        list.Size("length_spread", cells.Length == 0 ? 0 : Math.Sqrt(cells.Average(c => (c.Length - mean) * (c.Length - mean))));
        list.Share("same_shape", TopShare(cells, c => Shape(c, false)));
        list.Share("same_mould", TopShare(cells, c => Shape(c, true)));
        list.Share("same_start", TopShare(cells, c => c.Length < 2 ? c : c[..2]));
        list.Share("list", Share(c => c.AsSpan().IndexOfAny(";|,+") > 0 && c.Any(char.IsLetter)));
    }

    private static void Words(string[] cells, FeatureList list)
    {
        double Share(Func<string, bool> holds) => cells.Length == 0 ? 0 : (double)cells.Count(holds) / cells.Length;
        int[] words = [.. cells.Select(c => c.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length)];
        double WordShare(Func<int, bool> holds) => words.Length == 0 ? 0 : (double)words.Count(holds) / words.Length;
        list.Share("one_word", Share(c => !c.Contains(' ') && c.Any(char.IsLetter)));
        list.Share("two_words", WordShare(w => w == 2));
        list.Share("three_words", WordShare(w => w >= 3));
        list.Share("six_words", WordShare(w => w >= 6));
        list.Share("person", Share(c => Person().IsMatch(c)));
        list.Share("house_number", Share(c => House().IsMatch(c)));
        list.Share("word_number", Share(c => WordNumber().IsMatch(c)));
        ContentWords dictionary = ContentWords.Shipped;
        var found = new int[dictionary.Classes.Count];
        foreach (string cell in cells)
        {
            int classes = dictionary.Find(cell);
            for (int i = 0; i < found.Length; i++)
            {
                found[i] += (classes >> i) & 1;
            }
        }

        for (int i = 0; i < found.Length; i++)
        {
            list.Share("words_" + dictionary.Classes[i], cells.Length == 0 ? 0 : (double)found[i] / cells.Length);
        }
    }

    private static double TopShare(string[] cells, Func<string, string> key) =>
        cells.Length == 0 ? 0 : (double)cells.GroupBy(key, StringComparer.Ordinal).Max(g => g.Count()) / cells.Length;

    // Letters, digits and marks; where not exact, runs of the same count once.
    private static string Shape(string cell, bool exact)
    {
        Span<char> shape = stackalloc char[40];
        int n = 0;
        foreach (char c in cell)
        {
            char kind = char.IsAsciiDigit(c) ? '9' : char.IsLetter(c) ? 'a' : c;
            if (n < shape.Length && (exact || n == 0 || shape[n - 1] != kind))
            {
                shape[n++] = kind;
            }
        }

        return new string(shape[..n]);
    }

    [GeneratedRegex(@"^(?:\+|\(|0)(?:[ ().-]{0,2}\d){7,14}$|^\d{3}-\d{4}$|^\d{3}[ .-]\d{3}[ .-]\d{4}$|^\+?\d{2,3}[ -]\d{3,4}[ -]?\d{3,6}$", RegexOptions.CultureInvariant)]
    private static partial Regex Phone();

    [GeneratedRegex(@"^\d{1,2}:\d\d(?::\d\d)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Clock();

    [GeneratedRegex(@"^\{?[0-9a-fA-F]{8}-?[0-9a-fA-F]{4}-?[0-9a-fA-F]{4}-?[0-9a-fA-F]{4}-?[0-9a-fA-F]{12}\}?$|^[0-9a-f]{16,}$", RegexOptions.CultureInvariant)]
    private static partial Regex Guid();

    [GeneratedRegex(@"^(?:(?:Mr|Mrs|Ms|Dr|Herr|Frau|M|Mme|Sr|Sra|Sig|Pan|Pani|dhr|mevr)\.? )?\p{Lu}[\p{Ll}'.-]*,? (?:[a-z]{2,3} )?\p{Lu}[\p{Ll}'-]+$", RegexOptions.CultureInvariant)]
    private static partial Regex Person();

    [GeneratedRegex(@"^\d{1,5}[a-zA-Z]?,? \p{L}{2,}|\p{L}{3,}\.? \d{1,4} ?[a-zA-Z]?(?:,|$)", RegexOptions.CultureInvariant)]
    private static partial Regex House();

    [GeneratedRegex(@"^\p{L}{1,12}[ _-]?\d{1,2}$|^\d{1,2}$", RegexOptions.CultureInvariant)]
    private static partial Regex WordNumber();
}
