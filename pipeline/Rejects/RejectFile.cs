using System.Globalization;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>A refused row.</summary>
/// <param name="Line">Its line.</param>
/// <param name="Fault">Why.</param>
/// <param name="Cells">Its cells; empty where it could not be cut.</param>
/// <param name="Raw">Its text in the file.</param>
/// <param name="MayBeFooter">True when it would count as a footer, were no good row behind it.</param>
internal sealed record RejectedRow(int Line, RowFault Fault, IReadOnlyList<string> Cells, string Raw, bool MayBeFooter);

/// <summary>
/// The refused rows of one source as typed, in its own columns, for correction. Holds personal data, so it is written to
/// the rejects folder only. The file is created with the first row.
/// </summary>
/// <param name="path">The file.</param>
/// <param name="header">The source's column names.</param>
/// <param name="separator">The source's separator, for splitting rows that could not be parsed.</param>
/// <param name="forgotten">Customers of whom not even refused rows are kept.</param>
internal sealed class RejectFile(string path, IReadOnlyList<string> header, char separator, ForgottenCustomers forgotten) : IAsyncDisposable
{
    /// <summary>Ending of every reject file.</summary>
    public const string Ending = ".rejects.csv";

    /// <summary>Folder inside the input folder for corrected reject files.</summary>
    public const string MendedFolder = "mended";

    /// <summary>Column with the row's line.</summary>
    public const string LineColumn = "reject_line";

    /// <summary>Column with the code of the reason.</summary>
    public const string ReasonColumn = "reject_reason";

    /// <summary>Column with the reason in words.</summary>
    public const string MessageColumn = "reject_message";

    /// <summary>Column with the row as typed.</summary>
    public const string RawColumn = "reject_raw";

    private const string UnknownJobsEnding = ".unknown-jobs" + Ending;

    /// <summary>Columns after the source's own; ignored when a corrected file is loaded.</summary>
    public static readonly IReadOnlyList<string> OwnColumns = [LineColumn, "reject_field", ReasonColumn, MessageColumn, "reject_suggestion", RawColumn];

    // A mended file has our own columns already, and is not to have them twice.
    private readonly int _width = header.Count >= OwnColumns.Count && header.TakeLast(OwnColumns.Count).SequenceEqual(OwnColumns) ? header.Count - OwnColumns.Count : header.Count;
    private StreamWriter? _writer;

    /// <summary>Name of the file with the rows of a source that could not be read.</summary>
    /// <param name="ownName">The source's own name.</param>
    public static string NameOf(string ownName) => ownName.Replace("/", "__", StringComparison.Ordinal) + Ending;

    /// <summary>Name of the file with the part lines of a source whose job is in no job log.</summary>
    /// <param name="ownName">The source's own name.</param>
    public static string NameOfUnknownJobs(string ownName) => ownName.Replace("/", "__", StringComparison.Ordinal) + UnknownJobsEnding;

    /// <summary>Name under which refused rows of a mended file are kept, without the ending: what it mends, with <c>.again</c> behind it.</summary>
    /// <param name="mendedFile">The mended file in the input folder, for example <c>mended/log.csv.rejects.csv</c>.</param>
    public static string MendedAgain(string mendedFile) => Path.GetFileName(mendedFile)[..^Ending.Length] + ".again";

    /// <summary>First line of a load's output: where rows are kept as typed.</summary>
    /// <param name="output">The output folder, as the user named it.</param>
    /// <param name="rejected">Rows that were refused.</param>
    /// <param name="notData">Lines that are not data, such as titles and totals.</param>
    public static string Notice(string output, long rejected, long notData) => rejected + notData == 0
        ? $"No rows were refused, so {output} holds no names or phone numbers."
        : rejected == 0 ? string.Create(CultureInfo.InvariantCulture, $"No rows were refused. Private: {Path.Combine(output, "rejects")} holds {notData:N0} line{(notData == 1 ? "" : "s")} that {(notData == 1 ? "is" : "are")} not data, as typed. Nothing else does.")
        : string.Create(CultureInfo.InvariantCulture, $"Private: {Path.Combine(output, "rejects")} holds {rejected:N0} refused row{(rejected == 1 ? "" : "s")} as typed, including names and phone numbers. Nothing else does.");

    /// <summary>The same before it is known whether any row will be refused.</summary>
    public static string Notice(string output) =>
        $"Private: {Path.Combine(output, "rejects")} holds refused rows as typed, including names and phone numbers. Nothing else does.";

    /// <summary>Adds a row.</summary>
    public void Add(RejectedRow row)
    {
        StreamWriter writer = _writer ??= Begin();
        row = forgotten.IsIn(row.Cells, row.Raw) ? row with { Cells = [], Raw = "" } : row;
        IReadOnlyList<string> cells = row.Cells.Count > 0 ? row.Cells : Cut(row.Raw);
        for (int i = 0; i < _width; i++)
        {
            writer.Write(TablePrinter.CsvCell(i < cells.Count ? cells[i] : ""));
            writer.Write(',');
        }

        writer.WriteLine(string.Join(',', new object?[] { row.Line, row.Fault.Field, row.Fault.Code, row.Fault.Message, row.Fault.Suggestion, row.Raw }.Select(TablePrinter.CsvCell)));
    }

    /// <summary>Completes the file. Without rows there is no file, and one from an earlier load is deleted.</summary>
    public async Task CompleteAsync()
    {
        if (_writer is null)
        {
            if (File.Exists(path))
            {
                File.Delete(path);
            }

            return;
        }

        await _writer.DisposeAsync().ConfigureAwait(false);
        _writer = null;
        File.Move(path + ".part", path, overwrite: true);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_writer is not null)
        {
            await _writer.DisposeAsync().ConfigureAwait(false);
            _writer = null;
            File.Delete(path + ".part");
        }
    }

    private StreamWriter Begin()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var writer = new StreamWriter(path + ".part", append: false);
        writer.WriteLine(string.Join(',', header.Take(_width).Concat(OwnColumns).Select(h => TablePrinter.CsvCell(h))));
        return writer;
    }

    // A best effort to make correction easier: split as if there were no quotation marks.
    private string[] Cut(string raw)
    {
        string[] cells = raw.Split(separator);
        return cells.Length == header.Count ? [.. cells.Select(c => c.Trim('"', ' '))] : [];
    }
}
