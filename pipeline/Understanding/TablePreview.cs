using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>The first rows of a table, for a person to see whether its columns were understood.</summary>
internal static class TablePreview
{
    /// <summary>Rows shown at most.</summary>
    public const int Rows = 3;

    /// <summary>The rows. Names, addresses and phone numbers show their shape only: every letter an x, every digit a 0.</summary>
    /// <param name="reading">What the table is taken for.</param>
    /// <param name="map">How it will be read, or null if it is left out.</param>
    public static IReadOnlyList<IReadOnlyList<string>> Of(TableReading reading, SourceMap? map)
    {
        SampledTable table = reading.Table;
        bool[] personal = [.. table.AllColumns.Select(c => IsMappedAsPersonal(map, c.Name) || MaskedCells.IsPersonal(c, reading))];
        return [.. table.FirstRows.Select(r => (IReadOnlyList<string>)[.. r.Select((cell, i) => Shown(table.AllColumns[i], cell, personal[i]))])];
    }

    private static string Shown(ColumnSample column, string cell, bool personal) =>
        cell.Length == 0 ? ""
        : personal ? MaskedCells.Mask(cell)
        : MaskedCells.Show(column, cell);

    private static bool IsMappedAsPersonal(SourceMap? map, string column) =>
        map is not null && map.Columns.Any(c => c.Value.Contains(column) && FieldCatalog.Of(map.Kind).FirstOrDefault(f => f.Name == c.Key) is { Personal: true });
}
