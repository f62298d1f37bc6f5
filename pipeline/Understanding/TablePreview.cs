using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>The first rows of a table, for a person to see whether its columns were understood.</summary>
internal static class TablePreview
{
    /// <summary>Rows shown at most.</summary>
    public const int Rows = 3;

    private const string Technician = "technician";

    /// <summary>The rows. Names, addresses, phone numbers and serials show their shape only: every letter an x, every digit a 0. Texts lack what may be personal.</summary>
    /// <param name="reading">What the table is taken for.</param>
    /// <param name="map">How it will be read, or null if it is left out.</param>
    public static IReadOnlyList<IReadOnlyList<string>> Of(TableReading reading, SourceMap? map)
    {
        SampledTable table = reading.Table;
        return [.. table.FirstRows.Select(r => (IReadOnlyList<string>)[.. r.Select((cell, i) => Shown(reading, map, table.AllColumns[i], cell))])];
    }

    private static string Shown(TableReading reading, SourceMap? map, ColumnSample column, string typed)
    {
        string cell = MaskedCells.VanInitials(column, typed, reading);
        Field? field = map is null ? null : FieldCatalog.Of(map.Kind).FirstOrDefault(f => map.Columns.TryGetValue(f.Name, out IReadOnlyList<string>? headers) && headers.Contains(column.Name));
        bool isPersonal = field is null ? MaskedCells.IsPersonal(column, reading) : field.Personal || field.Cleaner == Cleaner.Serial || field.Name == Technician;

        // A number, a day or a code that is read as one is no phone number. Texts may name people.
        return cell.Length == 0 ? ""
            : isPersonal ? MaskedCells.Mask(cell)
            : field is { Content: not ContentClass.Text } && (!cell.Any(char.IsLetter) || (field.Content == ContentClass.Code && IsCode(cell))) ? cell
            : field is { Cleaner: Cleaner.Word or Cleaner.Supplier } ? MaskedCells.ShowWord(column, cell, field)
            : field is { Cleaner: Cleaner.PartsList or Cleaner.Code } ? MaskedCells.ShowParts(column, cell)
            : field is null ? MaskedCells.ShowUnread(column, cell)
            : field is { Content: ContentClass.Text } ? MaskedCells.Scrubbed(column.Texts, cell)
            : MaskedCells.Show(column, cell);
    }

    private static bool IsCode(string cell) => cell.Any(char.IsDigit) && !cell.Any(c => char.IsWhiteSpace(c) || c == '@');
}
