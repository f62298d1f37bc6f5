namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// A pattern in which every place takes one of a set of characters, such as <c>^Z\d{3}(?&lt;year&gt;[A-Z])(?&lt;month&gt;\d{2})$</c>.
/// Rules for serials are nearly all of that kind, and matching place by place costs a fiftieth of a regular expression.
/// </summary>
internal sealed class FixedPattern
{
    /// <summary>Longest text that can match.</summary>
    public const int MostPlaces = 64;

    private readonly bool[][] _places;

    private FixedPattern(bool[][] places, Dictionary<string, Range> groups)
    {
        _places = places;
        (Year, Week, Month) = (Group("year"), Group("week"), Group("month"));
        Range? Group(string name) => groups.TryGetValue(name, out Range range) ? range : null;
    }

    /// <summary>Where the year stands, or null if nowhere.</summary>
    public Range? Year { get; }

    /// <summary>Where the week stands.</summary>
    public Range? Week { get; }

    /// <summary>Where the month stands.</summary>
    public Range? Month { get; }

    /// <summary>Takes a pattern apart, or null if it is of another kind, or of one this reading is not sure of.</summary>
    /// <param name="pattern">A regular expression, read blind to case.</param>
    public static FixedPattern? Parse(string pattern)
    {
        if (pattern.Length < 3 || pattern[0] != '^' || pattern[^1] != '$' || pattern[^2] == '\\')
        {
            return null;
        }

        var places = new List<bool[]>();
        var groups = new Dictionary<string, Range>(StringComparer.Ordinal);
        ReadOnlySpan<char> rest = pattern.AsSpan(1, pattern.Length - 2);
        string? open = null;
        int start = 0;
        while (!rest.IsEmpty)
        {
            if (rest.StartsWith("(?<"))
            {
                int end = rest.IndexOf('>');
                if (open is not null || end < 4 || !IsName(rest[3..end]) || groups.ContainsKey(rest[3..end].ToString()))
                {
                    return null;
                }

                open = rest[3..end].ToString();
                start = places.Count;
                rest = rest[(end + 1)..];
            }
            else if (rest[0] == ')')
            {
                if (open is null)
                {
                    return null;
                }

                groups.Add(open, start..places.Count);
                open = null;
                rest = rest[1..];
            }
            else if (Set(ref rest) is not { } set || !Repeat(ref rest, out int times) || places.Count + times > MostPlaces)
            {
                return null;
            }
            else
            {
                places.AddRange(Enumerable.Repeat(set, times));
            }
        }

        return open is null ? new FixedPattern([.. places], groups) : null;
    }

    /// <summary>True when the pattern can decide about a text: it holds ASCII alone.</summary>
    public static bool Knows(ReadOnlySpan<char> text) => System.Text.Ascii.IsValid(text);

    /// <summary>True when the whole of an ASCII text matches.</summary>
    public bool IsMatch(ReadOnlySpan<char> text)
    {
        if (text.Length != _places.Length)
        {
            return false;
        }

        for (int i = 0; i < text.Length; i++)
        {
            if (!_places[i][text[i]])
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsName(ReadOnlySpan<char> name) => char.IsAsciiLetter(name[0]) && !name.ContainsAnyExcept(NameCharacters);

    private static readonly System.Buffers.SearchValues<char> NameCharacters =
        System.Buffers.SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");

    private static bool[]? Set(ref ReadOnlySpan<char> rest)
    {
        var set = new bool[128];
        if (rest.StartsWith("\\d"))
        {
            rest = rest[2..];
            return Add(set, '0', '9') ? set : null;
        }

        if (rest[0] == '[')
        {
            int end = rest.IndexOf(']');
            ReadOnlySpan<char> inside = end < 2 ? [] : rest[1..end];
            rest = end < 2 ? rest : rest[(end + 1)..];
            return Inside(inside, set) ? set : null;
        }

        char literal = rest[0];
        rest = rest[1..];
        return char.IsAsciiLetterOrDigit(literal) || literal is '-' or '/' or '_' ? (Add(set, literal, literal) ? set : null) : null;
    }

    private static bool Inside(ReadOnlySpan<char> inside, bool[] set)
    {
        if (inside.IsEmpty || inside[0] == '-' || inside[^1] == '-')
        {
            return false;
        }

        for (int i = 0; i < inside.Length; i++)
        {
            char from = inside[i];
            bool range = i + 2 < inside.Length && inside[i + 1] == '-';
            char to = range ? inside[i + 2] : from;
            if (!char.IsAsciiLetterOrDigit(from) || !char.IsAsciiLetterOrDigit(to) || to < from || !Add(set, from, to))
            {
                return false;
            }

            i += range ? 2 : 0;
        }

        return true;
    }

    private static bool Add(bool[] set, char from, char to)
    {
        for (char c = from; c <= to; c++)
        {
            if (!char.IsAsciiLetterOrDigit(c) && from != to)
            {
                return false;
            }

            set[char.ToUpperInvariant(c)] = true;
            set[char.ToLowerInvariant(c)] = true;
        }

        return true;
    }

    private static bool Repeat(ref ReadOnlySpan<char> rest, out int times)
    {
        times = 1;
        if (rest.IsEmpty || rest[0] is not ('{' or '*' or '+' or '?' or '|'))
        {
            return true;
        }

        int end = rest.IndexOf('}');
        if (rest[0] != '{' || end < 2 || rest[1..end].ContainsAnyExceptInRange('0', '9') || !int.TryParse(rest[1..end], out times) || times is < 1 or > MostPlaces)
        {
            return false;
        }

        rest = rest[(end + 1)..];
        return rest.IsEmpty || rest[0] is not ('{' or '*' or '+' or '?');
    }
}
