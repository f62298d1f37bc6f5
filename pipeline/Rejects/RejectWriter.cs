using System.Globalization;
using PartsSignal.Pipeline.Commands.Output;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>
/// Writes the refused rows of one file twice: without their cells for the store, and as they were, in the columns of
/// the file, for mending. The second holds personal data and goes to the rejects folder only.
/// </summary>
internal sealed class RejectWriter : IAsyncDisposable
{
    /// <summary>Ending of every file for mending.</summary>
    public const string Ending = ".rejects.csv";

    /// <summary>Columns behind the file's own; they are ignored when the file comes back.</summary>
    public static readonly IReadOnlyList<string> OwnColumns = ["reject_line", "reject_field", "reject_reason", "reject_message", "reject_suggestion", "reject_raw"];

    private readonly RejectTable _table;
    private readonly string _sourceFile;
    private readonly string _path;
    private readonly IReadOnlyList<string> _header;
    private readonly char _separator;
    private StreamWriter? _raw;

    /// <summary>Prepares both files; they are made with the first row.</summary>
    /// <param name="stageFolder">Folder of the row without cells.</param>
    /// <param name="rawPath">File for mending.</param>
    /// <param name="sourceFile">Name of the source.</param>
    /// <param name="header">The source's column names.</param>
    /// <param name="separator">The source's separator, to cut rows that could not be read.</param>
    public RejectWriter(string stageFolder, string rawPath, string sourceFile, IReadOnlyList<string> header, char separator)
    {
        _table = new RejectTable(stageFolder);
        (_sourceFile, _path, _header, _separator) = (sourceFile, rawPath, header, separator);
    }

    /// <summary>Rows so far.</summary>
    public long Rows => _table.Rows;

    /// <summary>Name of the file for mending of a source.</summary>
    public static string FileName(string sourceFile) => sourceFile.Replace("/", "__", StringComparison.Ordinal) + Ending;

    /// <summary>The first line of what a load says: where rows are kept as they were.</summary>
    /// <param name="output">The output folder, as the user named it.</param>
    /// <param name="rejected">Rows that were refused.</param>
    public static string Notice(string output, long rejected) => rejected == 0
        ? $"No row was refused. Nothing in {output} holds a row as it was."
        : string.Create(CultureInfo.InvariantCulture, $"Private: {Path.Combine(output, "rejects")} holds {rejected:N0} refused rows as they were, with names and numbers. Nothing else does.");

    /// <summary>The same before it is known whether any row will be refused.</summary>
    public static string Notice(string output) =>
        $"Private: {Path.Combine(output, "rejects")} will hold refused rows as they were, with names and numbers. Nothing else does.";

    /// <summary>Adds a row.</summary>
    public ValueTask AddAsync(RejectedRow row, CancellationToken cancellation)
    {
        WriteRaw(row);
        return _table.AddAsync(_sourceFile, row.Line, row.Fault, cancellation);
    }

    /// <summary>Ends both files.</summary>
    /// <returns>Path of the Parquet file; null where no row was refused.</returns>
    public async Task<string?> CompleteAsync(CancellationToken cancellation)
    {
        if (_raw is not null)
        {
            await _raw.DisposeAsync().ConfigureAwait(false);
            _raw = null;
            File.Move(_path + ".part", _path, overwrite: true);
        }
        else if (File.Exists(_path))
        {
            File.Delete(_path);
        }

        return await _table.CompleteAsync(cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_raw is not null)
        {
            await _raw.DisposeAsync().ConfigureAwait(false);
            _raw = null;
            File.Delete(_path + ".part");
        }

        await _table.DisposeAsync().ConfigureAwait(false);
    }

    private void WriteRaw(RejectedRow row)
    {
        if (_raw is null)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
            _raw = new StreamWriter(_path + ".part", append: false);
            _raw.WriteLine(string.Join(',', _header.Concat(OwnColumns).Select(h => TablePrinter.CsvCell(h))));
        }

        IReadOnlyList<string> cells = row.Cells.Count > 0 ? row.Cells : Cut(row.Raw);
        for (int i = 0; i < _header.Count; i++)
        {
            _raw.Write(TablePrinter.CsvCell(i < cells.Count ? cells[i] : ""));
            _raw.Write(',');
        }

        _raw.WriteLine(string.Join(',', new object?[] { row.Line, row.Fault.Field, row.Fault.Code, row.Fault.Message, row.Fault.Suggestion, row.Raw }.Select(TablePrinter.CsvCell)));
    }

    // Only a help for mending: the cells as they would be were the quotation marks left out.
    private string[] Cut(string raw)
    {
        string[] cells = raw.Split(_separator);
        return cells.Length == _header.Count ? [.. cells.Select(c => c.Trim('"', ' '))] : [];
    }
}

/// <summary>A refused row.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Fault">Why.</param>
/// <param name="Cells">Its cells; empty where it could not be cut.</param>
/// <param name="Raw">Its text in the file.</param>
/// <param name="MayBeFooter">True when it would count as a footer, were no good row behind it.</param>
internal sealed record RejectedRow(int Line, RowFault Fault, IReadOnlyList<string> Cells, string Raw, bool MayBeFooter);
