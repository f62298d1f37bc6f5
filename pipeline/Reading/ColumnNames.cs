using System.Globalization;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Columns by the words of their header. A header that stands more than once is told apart as <c>Part (2)</c>; a
/// column without a header is <c>#10</c>, counted from 1.
/// </summary>
internal sealed class ColumnNames
{
    private readonly Dictionary<string, int> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _loose = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Names the columns of a header.</summary>
    public ColumnNames(IReadOnlyList<string> header)
    {
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var names = new string[header.Count];
        for (int i = 0; i < header.Count; i++)
        {
            string plain = Plain(header[i]);
            int times = seen[plain] = seen.GetValueOrDefault(plain) + 1;
            names[i] = plain.Length == 0 ? $"#{i + 1}" : times == 1 ? plain : $"{plain} ({times})";
            _exact.TryAdd(names[i], i);
            _loose.TryAdd(names[i], i);
        }

        All = names;
    }

    /// <summary>All names in column order.</summary>
    public IReadOnlyList<string> All { get; }

    /// <summary>Position of a column from 0, or -1.</summary>
    public int Find(string name)
    {
        if (name.StartsWith('#') && int.TryParse(name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int n) && n >= 1 && n <= All.Count)
        {
            return n - 1;
        }

        string plain = Plain(name);
        return _exact.TryGetValue(plain, out int i) || _loose.TryGetValue(plain, out i) ? i : -1;
    }

    /// <summary>A header as it is compared: blind to case and to blanks around and doubled within.</summary>
    public static string Loose(string header) => Plain(header).ToUpperInvariant();

    private static string Plain(string name) =>
        string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Trim('\uFEFF');
}
