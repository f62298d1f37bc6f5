using System.Globalization;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>Finds the places where serials of one form may write the year.</summary>
internal sealed class YearCodeSearch
{
    private const int MostLetters = 26;
    private const int ShortestCycle = 10;
    private const int LongestCycle = 26;
    private const int MostSkipped = 6;
    private const int MostAlphabets = 4;

    // Letters that makers leave out because they look like digits or like each other, and the last ones of an alphabet.
    private static readonly string[] UsuallySkipped = ["", "I", "O", "Q", "IO", "IOQ", "IOU", "IOQU", "IOQUZ", "IOQZ", "IOQUYZ", "IOQS", "IOSZ", "IOQSUVZ", "OQ", "IQ", "IL", "ILO", "ILOQ", "ILOQU"];
    private readonly DateEvidence[] _told;
    private readonly int _length;
    private readonly int _from;
    private readonly int _to;
    private readonly double[][] _chances;

    /// <summary>Prepares.</summary>
    /// <param name="told">Serials of one form.</param>
    public YearCodeSearch(DateEvidence[] told)
    {
        _told = told;
        _length = told[0].Serial.Length;
        (_from, _to) = (Math.Max(YearCode.FirstYear, told.Min(t => t.FirstYear)), Math.Min(YearCode.LastYear, told.Max(t => t.LastYear)));
        DaySpan[] years = [.. Enumerable.Range(_from, _to - _from + 1).Select(y => DaySpan.Of(BuildInterval.Year(y)))];
        _chances = [.. told.Select(t => years.Select(y => t.Chance(y)).ToArray())];
    }

    /// <summary>How many readings were tried.</summary>
    public long Tried { get; private set; }

    /// <summary>Every reading that may be one: of letters the likeliest and those close to it.</summary>
    public IEnumerable<YearCode> Find()
    {
        for (int at = 0; at < _length; at++)
        {
            if (Same(at))
            {
                continue;
            }

            if (All(at, 1, char.IsAsciiDigit))
            {
                Tried++;
                yield return new YearCode(at, 1, new Dictionary<char, int>(), 10);
            }

            foreach (YearCode letters in All(at, 1, char.IsAsciiLetterUpper) ? Letters(at) : [])
            {
                yield return letters;
            }
        }

        foreach ((int length, int cycle) in new[] { (2, 100), (4, 0) })
        {
            for (int at = 0; at + length <= _length; at++)
            {
                if (All(at, length, char.IsAsciiDigit))
                {
                    Tried++;
                    yield return new YearCode(at, length, new Dictionary<char, int>(), cycle);
                }
            }
        }
    }

    private bool Same(int at) => Array.TrueForAll(_told, t => t.Serial[at] == _told[0].Serial[at]);

    private bool All(int at, int length, Func<char, bool> of) => Array.TrueForAll(_told, t => t.Serial.AsSpan(at, length).ToString().All(of));

    // A letter a year, in the order of the alphabet, some left out, beginning again after a cycle.
    private IEnumerable<YearCode> Letters(int at)
    {
        int[][] byLetter = [.. Enumerable.Range(0, MostLetters).Select(l => Enumerable.Range(0, _told.Length).Where(i => _told[i].Serial[at] - 'A' == l).ToArray())];
        int first = Array.FindIndex(byLetter, l => l.Length > 0), last = Array.FindLastIndex(byLetter, l => l.Length > 0);
        int[] unseen = [.. Enumerable.Range(first, last - first + 1).Where(l => byLetter[l].Length == 0)];
        var found = new List<(double Likelihood, int Cycle, int[] Alphabet, int Start)>();
        for (int cycle = ShortestCycle; cycle <= LongestCycle; cycle++)
        {
            double[][] offsets = [.. byLetter.Select(items => items.Length == 0 ? [] : Offsets(items, cycle))];
            foreach (int[] skipped in Skips(unseen))
            {
                int[] alphabet = [.. Enumerable.Range(first, last - first + 1).Except(skipped)];
                if (alphabet.Length > cycle || cycle - alphabet.Length > MostLetters - (last - first + 1))
                {
                    continue;
                }

                for (int start = 0; start < cycle; start++)
                {
                    Tried++;
                    double likelihood = alphabet.Select((l, i) => byLetter[l].Length == 0 ? 0 : offsets[l][(start + i) % cycle]).Sum();
                    found.Add((likelihood, cycle, alphabet, start));
                }
            }
        }

        // Several alphabets give the letters that were seen the same years.
        return found.OrderByDescending(f => f.Likelihood).ThenBy(f => f.Cycle).Select(f => Code(f.Cycle, f.Alphabet, f.Start)).DistinctBy(Years).Take(MostAlphabets);

        YearCode Code(int cycle, int[] alphabet, int start) =>
            new(at, 1, alphabet.Index().Where(l => byLetter[l.Item].Length > 0).ToDictionary(l => (char)('A' + l.Item), l => (start + l.Index) % cycle), cycle);
    }

    private string Years(YearCode code) => string.Join(';', code.Letters.OrderBy(l => l.Key).Select(l =>
        string.Create(CultureInfo.InvariantCulture, $"{l.Key}{string.Join(',', code.Years(l.Value, _from, _to))}")));

    // For each place in the cycle the log likelihood of some serials.
    private double[] Offsets(int[] items, int cycle)
    {
        var sums = new double[cycle];
        for (int offset = 0; offset < cycle; offset++)
        {
            int start = (((offset - _from) % cycle) + cycle) % cycle;
            foreach (int i in items)
            {
                double chance = 0;
                for (int y = start; y < _chances[i].Length; y += cycle)
                {
                    chance += _chances[i][y];
                }

                sums[offset] += chance > 0 ? Math.Log(chance) : Math.Log(1e-4);
            }
        }

        return sums;
    }

    // A letter between others that no serial has is left out by the maker, or its year is not among them.
    private static IEnumerable<int[]> Skips(int[] unseen)
    {
        if (unseen.Length <= MostSkipped)
        {
            return Enumerable.Range(0, 1 << unseen.Length).Select(mask => unseen.Where((_, i) => (mask >> i & 1) == 1).ToArray());
        }

        return UsuallySkipped.Select(s => unseen.Where(u => s.Contains((char)('A' + u), StringComparison.Ordinal)).ToArray()).Append(unseen)
            .DistinctBy(s => string.Join(',', s));
    }
}
