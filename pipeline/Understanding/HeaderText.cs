using System.Globalization;
using System.Text;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Takes headers apart.</summary>
internal static class HeaderText
{
    /// <summary>Words written together divided: <c>BscStartDate</c>, <c>part_no</c>.</summary>
    public static string Spaced(string header)
    {
        var text = new StringBuilder(header.Length + 8);
        for (int i = 0; i < header.Length; i++)
        {
            bool starts = i > 0 && char.IsUpper(header[i]) && (char.IsLower(header[i - 1]) || (i + 1 < header.Length && char.IsUpper(header[i - 1]) && char.IsLower(header[i + 1])));
            text.Append(starts ? " " : "").Append(header[i]);
        }

        return text.ToString();
    }

    /// <summary>
    /// The header without its running number, and the number: <c>Qty 2</c> gives <c>Qty</c> and 2, <c>Part1 No</c> gives
    /// <c>Part No</c> and 1, <c>Price (3)</c> gives <c>Price</c> and 3. Null: there is none.
    /// </summary>
    public static (string Stem, int Number)? Numbered(string header)
    {
        int start = header.AsSpan().IndexOfAnyInRange('0', '9');
        if (start < 0)
        {
            return null;
        }

        int end = start;
        while (end < header.Length && char.IsAsciiDigit(header[end]))
        {
            end++;
        }

        if (end - start > 2 || header.AsSpan(end).ContainsAnyInRange('0', '9'))
        {
            return null;
        }

        string stem = (header[..start].TrimEnd(' ', '(', '_', '#') + " " + header[end..].TrimStart(' ', ')', '_')).Trim();
        return stem.Length == 0 ? null : (stem, int.Parse(header.AsSpan(start, end - start), NumberStyles.None, CultureInfo.InvariantCulture));
    }
}
