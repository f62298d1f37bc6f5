using System.Globalization;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Rejects;

/// <summary>
/// Refused rows of one file as they were, in the columns of the file, for mending. Holds personal data and goes to the
/// rejects folder only. The file is made with the first row.
/// </summary>
/// <param name="path">The file.</param>
/// <param name="header">The source's column names.</param>
/// <param name="separator">The source's separator, to cut rows that could not be read.</param>
internal sealed class RejectFile(string path, IReadOnlyList<string> header, char separator) : IAsyncDisposable
{
    /// <summary>Ending of every file for mending.</summary>
    public const string Ending = ".rejects.csv";

    /// <summary>Folder within the input folder from which mended rows are read.</summary>
    public const string MendedFolder = "mended";

    private const string UnknownJobsEnding = ".unknown-jobs" + Ending;

    /// <summary>Columns behind the file's own; they are ignored when the file comes back.</summary>
    public static readonly IReadOnlyList<string> OwnColumns = ["reject_line", "reject_field", "reject_reason", "reject_message", "reject_suggestion", "reject_raw"];

    private StreamWriter? _writer;

    /// <summary>Name of the file with the rows of a source that could not be read.</summary>
    /// <param name="ownName">The source's own name.</param>
    public static string NameOf(string ownName) => ownName.Replace("/", "__", StringComparison.Ordinal) + Ending;

    /// <summary>Name of the file with the lines of a source whose job is in no log.</summary>
    /// <param name="ownName">The source's own name.</param>
    public static string NameOfUnknownJobs(string ownName) => ownName.Replace("/", "__", StringComparison.Ordinal) + UnknownJobsEnding;

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
    public void Add(RejectedRow row)
    {
        StreamWriter writer = _writer ??= Begin();
        IReadOnlyList<string> cells = row.Cells.Count > 0 ? row.Cells : Cut(row.Raw);
        for (int i = 0; i < header.Count; i++)
        {
            writer.Write(TablePrinter.CsvCell(i < cells.Count ? cells[i] : ""));
            writer.Write(',');
        }

        writer.WriteLine(string.Join(',', new object?[] { row.Line, row.Fault.Field, row.Fault.Code, row.Fault.Message, row.Fault.Suggestion, row.Raw }.Select(TablePrinter.CsvCell)));
    }

    /// <summary>Ends the file; without a row there is none, and one of an earlier load goes.</summary>
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
        writer.WriteLine(string.Join(',', header.Concat(OwnColumns).Select(h => TablePrinter.CsvCell(h))));
        return writer;
    }

    // Only a help for mending: the cells as they would be were the quotation marks left out.
    private string[] Cut(string raw)
    {
        string[] cells = raw.Split(separator);
        return cells.Length == header.Count ? [.. cells.Select(c => c.Trim('"', ' '))] : [];
    }
}
