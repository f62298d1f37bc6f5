using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// The columns that tell a staged row from others; the last ones of every staged table. Which file it is from is known
/// by where it stands, and whoever reads the staged files adds it.
/// </summary>
internal sealed class RowStamp(StagedTable table, IdentityKey key)
{
    private ValueColumn<UInt128>? _hash;
    private ValueColumn<int>? _line;

    /// <summary>Fills them. The columns are made with the first row, after the table's own.</summary>
    public void Set(int at, UInt128? digest, int line)
    {
        (_hash ??= table.Identifier("row_hash", key)).Set(at, digest);
        (_line ??= table.Int("source_line")).Set(at, line);
    }
}
