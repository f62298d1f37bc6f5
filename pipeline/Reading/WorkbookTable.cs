using System.Globalization;
using System.Text;
using ExcelDataReader;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Rows of one sheet of a workbook. Text stays text for text; dates come out as ISO text whichever of the two date
/// systems the workbook counts in; formulas by their stored value.
/// </summary>
internal sealed class WorkbookTable : TableReader
{
    private const int MostColumns = 1 << 14;
    private readonly Stream _stream;
    private readonly IExcelDataReader _reader;
    private readonly string _file;
    private readonly long _bytes;
    private readonly IReadOnlyDictionary<(int Row, int Column), string> _errors;
    private readonly Func<bool> _readRow;
    private bool[] _days = [];
    private double _firstDay;

    /// <summary>Opens a sheet.</summary>
    /// <param name="stream">The workbook; must be able to seek; closed with this reader.</param>
    /// <param name="file">Name for faults.</param>
    /// <param name="sheet">Name of the sheet; null: the first that is shown.</param>
    /// <exception cref="BadInputException">The workbook cannot be read, or has no such sheet.</exception>
    public WorkbookTable(Stream stream, string file, string? sheet)
    {
        Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
        _stream = stream;
        _bytes = stream.Length;
        _file = file;
        _readRow = ReadRow;
        Row.IsOfText = false;
        _reader = Guarded(() => ExcelReaderFactory.CreateReader(stream, new ExcelReaderConfiguration { LeaveOpen = true, FallbackEncoding = Encoding.GetEncoding(1252) }));
        FindSheet(sheet);
        RequireColumns();
        _errors = Guarded(() => ErrorsOf(stream));
    }

    /// <summary>Name of the sheet.</summary>
    public string Sheet => _reader.Name;

    /// <summary>Name of this sheet and of those behind it that are shown. Rows cannot be read afterwards.</summary>
    public IReadOnlyList<string> RestOfSheets()
    {
        var names = new List<string> { _reader.Name };
        while (Guarded(_reader.NextResult))
        {
            if (_reader.VisibleState == "visible")
            {
                names.Add(_reader.Name);
            }
        }

        return names;
    }

    /// <summary>Reads plain numbers in these columns as the days they count, in the workbook's own date system.</summary>
    /// <param name="columns">Columns of dates, by their headers.</param>
    public void ReadDays(IReadOnlyCollection<int> columns)
    {
        if (columns.Count > 0)
        {
            _days = [.. Enumerable.Range(0, columns.Max() + 1).Select(columns.Contains)];
            _firstDay = Guarded(() => WorkbookDates.FirstDay(_stream));
        }
    }

    /// <inheritdoc/>
    public override long Position => _reader.RowCount > 0 ? (long)(_bytes * Math.Min(1.0, Line / (double)_reader.RowCount)) : 0;

    /// <inheritdoc/>
    public override ReadOnlySpan<byte> RawUtf8 => [];

    /// <inheritdoc/>
    public override string Place(int column, int line) => $"cell {Sheet}!{Letters(column)}{line}";

    /// <inheritdoc/>
    public override bool Read()
    {
        Row.Clear();
        return Guarded(_readRow);
    }

    /// <summary>Text of the merged cell that covers a header cell; empty where none does.</summary>
    public string Merged(int column)
    {
        int row = Line - 1;
        CellRange? range = _reader.MergeCells?.FirstOrDefault(m => m.FromRow <= row && row <= m.ToRow && m.FromColumn < column && column <= m.ToColumn);
        return range is null ? "" : Row[range.FromColumn].ToString();
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _reader.Dispose();
            _stream.Dispose();
        }
    }

    private bool ReadRow()
    {
        if (!_reader.Read())
        {
            return false;
        }

        Line = _reader.Depth + 1;
        for (int i = 0; i < _reader.FieldCount; i++)
        {
            Add(i);
        }

        return true;
    }

    private static string Letters(int column)
    {
        string letters = "";
        for (int n = column + 1; n > 0; n = (n - 1) / 26)
        {
            letters = (char)('A' + ((n - 1) % 26)) + letters;
        }

        return letters;
    }

    private static bool IsOpenXml(Stream stream)
    {
        long at = stream.Position;
        stream.Position = 0;
        bool zip = stream.ReadByte() == 'P' && stream.ReadByte() == 'K';
        stream.Position = at;
        return zip;
    }

    private IReadOnlyDictionary<(int Row, int Column), string> ErrorsOf(Stream stream)
    {
        long at = stream.Position;
        IReadOnlyDictionary<(int, int), string> errors = IsOpenXml(stream) ? WorkbookErrors.Find(stream, _reader.Name) : OldErrors(stream);
        stream.Position = at;
        return errors;
    }

    private IReadOnlyDictionary<(int Row, int Column), string> OldErrors(Stream stream)
    {
        var bytes = new byte[stream.Length];
        stream.Position = 0;
        stream.ReadExactly(bytes);
        return OldWorkbookErrors.Find(bytes, _reader.Name);
    }

    private void FindSheet(string? sheet)
    {
        var names = new List<string>();
        do
        {
            if (sheet is null ? _reader.VisibleState == "visible" : _reader.Name.Equals(sheet, StringComparison.OrdinalIgnoreCase))
            {
                return;
            }

            names.Add(_reader.Name);
        }
        while (Guarded(_reader.NextResult));
        Dispose();
        throw new BadInputException($"{_file}: has no sheet '{sheet}'. Its sheets: {string.Join(", ", names)}.");
    }

    private void RequireColumns()
    {
        if (_reader.FieldCount > MostColumns)
        {
            int columns = _reader.FieldCount;
            Dispose();
            throw new FileRefusedException(_file, FileFaults.BrokenWorkbook($"it counts {columns} columns, and no sheet has more than {MostColumns}"));
        }
    }

    private void Add(int column)
    {
        if (_errors.Count > 0 && _errors.TryGetValue((Line - 1, column), out string? error))
        {
            Row.Add(error, CellForm.Error);
            return;
        }

        switch (_reader.GetValue(column))
        {
            case null: Row.Add([]); break;
            case string text: Row.Add(text); break;
            case bool flag: Row.Add(flag ? "true" : "false", CellForm.Flag); break;
            case DateTime time: Row.Add(WorkbookDates.Text(time), CellForm.Date); break;
            case TimeSpan span: Row.Add(span.ToString("c", CultureInfo.InvariantCulture), CellForm.Date); break;
            case double number when column < _days.Length && _days[column] && WorkbookDates.Day(number, _firstDay) is { } day: Row.Add(day, CellForm.Date); break;
            case double number: AddNumber(number, _reader.GetNumberFormatString(column)); break;
            case object other: Row.Add(Convert.ToString(other, CultureInfo.InvariantCulture)); break;
        }
    }

    // Fifteen digits survive in a spreadsheet; a format with an exponent, or a row of zeros behind few digits, tells of
    // a code such as 1E10 that was taken for a number.
    private void AddNumber(double number, string? format)
    {
        bool damaged = Math.Abs(number) >= 1e15
            || (format is not null && format.Contains("E+", StringComparison.OrdinalIgnoreCase))
            || (Math.Abs(number) >= 1e10 && number % 1e5 == 0);
        string text = number == Math.Truncate(number) && Math.Abs(number) < 1e28
            ? ((decimal)number).ToString("0", CultureInfo.InvariantCulture)
            : number.ToString("R", CultureInfo.InvariantCulture);
        Row.Add(text, damaged ? CellForm.DamagedNumber : CellForm.Number);
    }

    // The workbook is in memory by now, so that whatever its reader stumbles over is a fault of its bytes.
    private T Guarded<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception bad) when (bad is not OutOfMemoryException and not FileRefusedException)
        {
            _stream.Dispose();
            throw new FileRefusedException(_file, FileFaults.BrokenWorkbook(bad.Message));
        }
    }
}
