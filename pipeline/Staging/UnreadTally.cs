namespace PartsSignal.Pipeline.Staging;

/// <summary>Counts the cells of lesser fields that could not be read, by field and reason.</summary>
internal sealed class UnreadTally
{
    private readonly Dictionary<(string Field, string Code), (long Cells, int First)> _unread = [];

    /// <summary>All of them together.</summary>
    public long Cells { get; private set; }

    /// <summary>By field and reason, in no order.</summary>
    public IReadOnlyList<UnreadCells> ByField =>
        [.. _unread.Select(u => new UnreadCells(u.Key.Field, u.Key.Code, u.Value.Cells, u.Value.First))];

    /// <summary>Counts a cell.</summary>
    public void Add(string field, string code, int line)
    {
        Cells++;
        (long cells, int first) = _unread.GetValueOrDefault((field, code));
        _unread[(field, code)] = (cells + 1, first == 0 ? line : first);
    }
}
