namespace PartsSignal.Pipeline.Understanding;

/// <summary>How the columns of a table depend on each other: one determines another, one is the start of another, a product, a difference.</summary>
internal sealed class RowFeatures
{
    private const int Looked = 400;
    private const int MostColumns = 60;
    private readonly TableSample _table;
    private readonly int _rows;
    private readonly double[,] _determines;
    private readonly double[] _start, _within, _holds, _total, _factor, _days, _years;
    private readonly bool[] _divides;

    /// <summary>Compares every pair of columns.</summary>
    public RowFeatures(TableSample table)
    {
        _table = table;
        _rows = Math.Min(Looked, table.Sampled);
        int n = table.Columns.Count;
        _determines = new double[n, n];
        (_start, _within, _holds, _total, _factor, _days, _years) = (new double[n], new double[n], new double[n], new double[n], new double[n], new double[n], new double[n]);
        _divides = [.. table.Columns.Select(Divides)];
        int most = Math.Min(n, MostColumns);
        for (int a = 0; a < most; a++)
        {
            for (int b = 0; b < most; b++)
            {
                if (a != b)
                {
                    Compare(a, b);
                }
            }
        }

        Products(most);
        Differences(most);
    }

    /// <summary>Adds the evidence of one column, by its place in the table.</summary>
    public void Add(int at, FeatureList list)
    {
        int n = _table.Columns.Count;
        double[] gives = [.. Enumerable.Range(0, n).Where(b => b != at && _divides[b]).Select(b => _determines[at, b])];
        double[] given = [.. Enumerable.Range(0, n).Where(b => b != at && _divides[b]).Select(b => _determines[b, at])];
        list.Share("determines", _divides[at] && gives.Length > 0 ? gives.Max() : 0);
        list.Count("determines_columns", _divides[at] ? gives.Count(g => g > 0.97) : 0);
        list.Share("determined", _divides[at] && given.Length > 0 ? given.Max() : 0);
        list.Count("determined_by_columns", _divides[at] ? given.Count(g => g > 0.97) : 0);
        list.Share("start_of_other", _start[at]);
        list.Share("within_other", _within[at]);
        list.Share("holds_other", _holds[at]);
        list.Share("total", _total[at]);
        list.Share("factor", _factor[at]);
        list.Share("days_between", _days[at]);
        list.Share("years_between", _years[at]);
    }

    /// <summary>How well a column tells each other one: 0 where that cannot be known, 1 not at all, 15 wholly.</summary>
    public byte[] Determined(int at) => [.. Enumerable.Range(0, _table.Columns.Count)
        .Select(b => b != at && _divides[at] && _divides[b] && at < MostColumns && b < MostColumns ? (byte)(1 + Math.Round(_determines[at, b] * (FeatureList.Top - 1))) : (byte)0)];

    // A column with some values that each stand more than once divides the rows into groups.
    private bool Divides(ColumnSample column) => column.Distinct >= 2 && column.Filled >= 8 && column.Distinct * 1.4 < column.Filled && !column.IsDates;

    private void Compare(int a, int b)
    {
        ColumnSample first = _table.Columns[a], second = _table.Columns[b];
        if (_divides[a] && _divides[b])
        {
            _determines[a, b] = Determines(first, second);
        }

        if (first.IsDates || second.IsDates || first.Filled == 0 || second.Filled == 0)
        {
            return;
        }

        int both = 0, starts = 0, within = 0;
        for (int i = 0; i < _rows; i++)
        {
            string x = first.Cells[i], y = second.Cells[i];
            if (x.Length >= 2 && y.Length > 0)
            {
                both++;
                bool longer = y.Length > x.Length;
                starts += longer && y.StartsWith(x, StringComparison.OrdinalIgnoreCase) ? 1 : 0;
                within += longer && x.Length >= 3 && y.Contains(x, StringComparison.OrdinalIgnoreCase) ? 1 : 0;
            }
        }

        if (both >= 3)
        {
            _start[a] = Math.Max(_start[a], (double)starts / both);
            _within[a] = Math.Max(_within[a], (double)within / both);
            _holds[b] = Math.Max(_holds[b], (double)within / both);
        }
    }

    // Share of rows whose value of the second is the commonest of their group, beyond what the commonest of all would give.
    private double Determines(ColumnSample first, ColumnSample second)
    {
        var counts = new Dictionary<long, int>();
        var all = new Dictionary<int, int>();
        int rows = 0;
        for (int i = 0; i < _rows; i++)
        {
            if (first.Codes[i] >= 0 && second.Codes[i] >= 0)
            {
                rows++;
                long key = ((long)first.Codes[i] << 32) | (uint)second.Codes[i];
                counts[key] = counts.GetValueOrDefault(key) + 1;
                all[second.Codes[i]] = all.GetValueOrDefault(second.Codes[i]) + 1;
            }
        }

        if (rows < 8 || all.Count < 2)
        {
            return 0;
        }

        var best = new Dictionary<int, int>();
        foreach ((long key, int count) in counts)
        {
            best[(int)(key >> 32)] = Math.Max(best.GetValueOrDefault((int)(key >> 32)), count);
        }

        double chance = all.Values.Max() / (double)rows;
        return chance > 0.98 ? 0 : Math.Max(0, ((best.Values.Sum() / (double)rows) - chance) / (1 - chance));
    }

    private void Products(int most)
    {
        int[] numbers = [.. Enumerable.Range(0, most).Where(i => _table.Columns[i].IsNumbers && _table.Columns[i].Distinct > 1).Take(16)];
        foreach (int t in numbers)
        {
            for (int x = 0; x < numbers.Length; x++)
            {
                for (int y = x + 1; y < numbers.Length; y++)
                {
                    int a = numbers[x], b = numbers[y];
                    if (a != t && b != t && Fits(t, a, b) is > 0.7 and var share)
                    {
                        (_total[t], _factor[a], _factor[b]) = (Math.Max(_total[t], share), Math.Max(_factor[a], share), Math.Max(_factor[b], share));
                    }
                }
            }
        }
    }

    private double Fits(int total, int a, int b)
    {
        int all = 0, fits = 0;
        for (int i = 0; i < _rows; i++)
        {
            if (_table.Columns[total].Numbers[i] is { } t && _table.Columns[a].Numbers[i] is { } x && _table.Columns[b].Numbers[i] is { } y && t > 1.01 && x != 0 && y > 1.01)
            {
                all++;
                fits += Math.Abs((x * y) - t) <= Math.Max(0.011, t * 0.0005) && x != 1 ? 2 : Math.Abs((x * y) - t) <= 0.011 ? 1 : 0;
            }
        }

        return all < 5 || fits < all * 1.02 ? 0 : Math.Min(1, fits / (1.1 * all));
    }

    private void Differences(int most)
    {
        int[] dates = [.. Enumerable.Range(0, most).Where(i => _table.Columns[i].IsDates).Take(8)];
        foreach (int t in Enumerable.Range(0, most).Where(i => _table.Columns[i].IsNumbers && _table.Columns[i].Distinct > 1))
        {
            foreach (int a in dates)
            {
                foreach (int b in dates.Where(b => b != a))
                {
                    (double days, double years) = Between(t, a, b);
                    (_days[t], _years[t]) = (Math.Max(_days[t], days), Math.Max(_years[t], years));
                }
            }
        }
    }

    private (double Days, double Years) Between(int number, int from, int to)
    {
        int all = 0, days = 0, years = 0;
        for (int i = 0; i < _rows; i++)
        {
            if (_table.Columns[number].Numbers[i] is { } n && n > 1 && _table.Columns[from].Days[i] is { } a && _table.Columns[to].Days[i] is { } b)
            {
                all++;
                days += Math.Abs(b - a - n) <= 1 ? 1 : 0;
                years += Math.Abs(((b - a) / 365.25) - n) <= 1 ? 1 : 0;
            }
        }

        return all < 5 ? (0, 0) : ((double)days / all, (double)years / all);
    }
}
