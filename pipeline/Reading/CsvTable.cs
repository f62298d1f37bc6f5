using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Unicode;
using CsvHelper;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Rows of a text table. One bad row costs one row: where a quote that is never closed (or closed in a later row) runs
/// over line ends, the line it began on is the fault and reading goes on with the next line.
/// </summary>
internal sealed class CsvTable : TableReader
{
    private const int BufferBytes = 1 << 16;
    private const int KeptRawBytes = 4_000;
    private readonly ReplayStream _bytes;
    private readonly CsvReaderOptions _options;
    private readonly ReadingLimits _limits;
    private readonly bool _brokenText;
    private readonly RowShape _shape = new();
    private CsvReader _csv;
    private CsvMalformedReason? _malformed;
    private long _base;
    private int _lineBase;
    private long _resume;
    private int _resumeLine;
    private int _columns;
    private byte[]? _raw;

    /// <summary>Opens a table.</summary>
    /// <param name="utf8">The text as UTF-8 without a byte order mark; closed with this reader.</param>
    /// <param name="separator">One of comma, tab, semicolon, pipe.</param>
    /// <param name="firstLine">Line to start on, from 1; lines above are skipped as lines.</param>
    /// <param name="brokenText">True when the text holds replacement marks for bytes that could not be decoded.</param>
    /// <param name="limits">How long a row and how many columns.</param>
    public CsvTable(Stream utf8, char separator, int firstLine, bool brokenText, ReadingLimits limits)
    {
        _bytes = new ReplayStream(utf8);
        _limits = limits;
        _brokenText = brokenText;
        _options = new CsvReaderOptions
        {
            HasHeader = false,
            Separator = separator,
            TrackLineNumbers = true,
            SkipEmptyLines = true,
            BufferSize = BufferBytes,
            MaxRecordSize = limits.MaxRowBytes,
            Encoding = Encoding.UTF8,
            IncludeValuesInExceptions = false,
            OnMalformedRecord = m => _malformed ??= m.Reason,
        };
        long at = 0;
        for (int line = 1; line < firstLine; line++)
        {
            at = _bytes.LineEnd(at, 0, out _);
        }

        Start(at, Math.Max(1, firstLine));
    }

    /// <inheritdoc/>
    public override long Position => _bytes.Position;

    /// <inheritdoc/>
    public override ReadOnlySpan<byte> RawUtf8 => _raw ?? _csv.RawRecord[..Math.Min(_csv.RawRecord.Length, KeptRawBytes)];

    /// <inheritdoc/>
    public override string Place(int column, int line) => $"column {column + 1}";

    /// <summary>How many cells a row should have; 0: not known yet.</summary>
    public void Expect(int columns) => _columns = columns;

    /// <inheritdoc/>
    public override bool Read()
    {
        Row.Clear();
        Fault = null;
        _raw = null;
        _malformed = null;
        try
        {
            if (!_csv.Read())
            {
                return false;
            }
        }
        catch (CsvFormatException)
        {
            return RejectNextLine();
        }

        Line = _lineBase + (int)_csv.LineNumber;
        long at = _base + _csv.ByteOffset;
        bool spansLines = _csv.RawRecord.IndexOfAny((byte)'\n', (byte)'\r') >= 0;
        Mark(at, spansLines);
        Row.EndsFile = _bytes.End == at + _csv.RawRecord.Length;
        if (_malformed is { } reason && reason != CsvMalformedReason.StrayQuote
            && (spansLines || reason == CsvMalformedReason.UnterminatedQuote))
        {
            return RejectLine(at, Line);
        }

        if (spansLines && SwallowedRows())
        {
            return RejectLine(at, Line);
        }

        if (_malformed == CsvMalformedReason.TextAfterClosingQuote && _columns > 0 && _csv.FieldCount != _columns)
        {
            Fault = new RowFault(null, ReasonCode.BadQuoting, $"Text follows a closing quotation mark, and the row has {_csv.FieldCount} cells instead of {_columns}.", "Double the quotation marks that are part of the text.");
            return true;
        }

        if (_csv.RawRecord.Length > _limits.MaxRowBytes)
        {
            Fault = TooLong();
            return true;
        }

        if (_csv.FieldCount > _limits.MaxColumns)
        {
            Fault = new RowFault(null, ReasonCode.TooManyCells, $"The row has {_csv.FieldCount:N0} cells; the limit is {_limits.MaxColumns:N0}.", "Raise limits.maxColumns, or mend the row.");
            return true;
        }

        TakeCells();
        if (_shape.Learning && _malformed is null && Row.Count == _columns)
        {
            _shape.Learn(Row);
        }

        if (_brokenText && (!Utf8.IsValid(_csv.RawRecord) || _csv.RawRecord.IndexOf("\uFFFD"u8) >= 0))
        {
            Fault = new RowFault(null, ReasonCode.BadEncoding, "The row holds bytes that are no text in this file's encoding.", "Save the file as UTF-8, or name its encoding in the map.");
        }

        return true;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _csv.Dispose();
            _bytes.Dispose();
        }
    }

    // Most rows are ASCII and most cells stand in them as they are: widened once, a cell is a place in the row.
    private void TakeCells()
    {
        ReadOnlySpan<byte> record = _csv.RawRecord;
        bool taken = Row.TryTake(record);
        for (int i = 0; i < _csv.FieldCount; i++)
        {
            ReadOnlySpan<byte> cell = _csv.GetSpan(i);
            nint at = Unsafe.ByteOffset(in MemoryMarshal.GetReference(record), in MemoryMarshal.GetReference(cell));
            if (taken && (cell.IsEmpty || ((nuint)at < (nuint)record.Length)))
            {
                Row.AddPart(cell.IsEmpty ? 0 : (int)at, cell.Length);
            }
            else
            {
                Row.Add(cell);
            }
        }
    }

    // A quoted cell may hold line ends, but not whole rows: lines with as many cells as a row, and figures where rows
    // have figures, are rows. Where no column of figures is known, a line between the first and the last decides.
    private bool SwallowedRows()
    {
        if (_columns < 3)
        {
            return false;
        }

        int whole = 0;
        bool first = true;
        ReadOnlySpan<byte> rest = _csv.RawRecord;
        while (!rest.IsEmpty)
        {
            int end = rest.IndexOf((byte)'\n');
            bool last = end < 0;
            ReadOnlySpan<byte> line = last ? rest : rest[..end];
            if (line.Count((byte)_options.Separator!.Value) == _columns - 1)
            {
                bool? fits = _shape.Fits(Encoding.UTF8.GetString(line), _options.Separator!.Value);
                whole += fits == false ? 0 : !first && !last ? 2 : fits == true ? 1 : 0;
            }

            first = false;
            rest = last ? [] : rest[(end + 1)..];
        }

        return whole >= 2;
    }

    private void Mark(long at, bool spansLines)
    {
        _bytes.KeepFrom = at;
        _resume = at + _csv.RawRecord.Length;
        _resumeLine = Line + (spansLines ? Breaks(_csv.RawRecord) : 0);
    }

    private static int Breaks(ReadOnlySpan<byte> text)
    {
        int breaks = text.Count((byte)'\n');
        for (int i = 0; i < text.Length; i++)
        {
            breaks += text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n') ? 1 : 0;
        }

        return breaks;
    }

    // The reader gave up within a row it never returned; that row begins on the line after the last one returned.
    private bool RejectNextLine()
    {
        if (_resume == _base)
        {
            return RejectLine(_base, _resumeLine);
        }

        long next = _bytes.LineEnd(_resume, 0, out _);
        return RejectLine(next, _resumeLine + 1);
    }

    private RowFault TooLong() =>
        new(null, ReasonCode.RowTooLong, $"The row is longer than {_limits.MaxRowBytes:N0} bytes.", "Raise limits.maxRowBytes, or mend the row.");

    private bool RejectLine(long at, int line)
    {
        long next = _bytes.LineEnd(at, KeptRawBytes, out byte[] raw);
        Fault = next - at > _limits.MaxRowBytes
            ? TooLong()
            : new RowFault(null, ReasonCode.OpenQuote, "A quotation mark is opened and not closed on this row.", "Close the quotation mark, or double it where it is part of the text.");
        _raw = raw;
        Line = line;
        _csv.Dispose();
        Start(next, line + 1);
        return true;
    }

    [MemberNotNull(nameof(_csv))]
    private void Start(long at, int line)
    {
        _base = at;
        _resume = at;
        _resumeLine = line;
        _lineBase = line - 1;
        _bytes.KeepFrom = at;
        _bytes.GoTo(at);
        _csv = CsvReader.Create(_bytes, _options, leaveOpen: true);
    }
}
