namespace PartsSignal.Pipeline.Understanding;

/// <summary>Keeps some of many rows, spread evenly from the first to the last; which ones depends on nothing but their number.</summary>
internal sealed class RowSample(int most)
{
    private readonly List<string[]> _rows = [];
    private long _seen;
    private long _stride = 1;

    /// <summary>The kept rows, in order.</summary>
    public IReadOnlyList<string[]> Rows => _rows;

    /// <summary>True when the next row would be kept.</summary>
    public bool WantsNext => _seen % _stride == 0;

    /// <summary>Keeps a row; only where <see cref="WantsNext"/> says so.</summary>
    public void Keep(string[] row)
    {
        _rows.Add(row);
        _seen++;
        if (_rows.Count >= most)
        {
            _stride *= 2;
            int kept = 0;
            for (int i = 0; i < _rows.Count; i += 2)
            {
                _rows[kept++] = _rows[i];
            }

            _rows.RemoveRange(kept, _rows.Count - kept);
        }
    }

    /// <summary>Lets a row pass.</summary>
    public void Skip() => _seen++;
}
