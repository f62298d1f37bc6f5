using System.Runtime.CompilerServices;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Transform;

/// <summary>
/// Rejects part lines whose job is in no log. Only the transform can find them, and by then their cells are gone, so
/// their files are read again and the lines are written to the rejects folder as typed.
/// </summary>
/// <param name="database">The session, with <c>int_orphan_part_lines</c>.</param>
/// <param name="output">Folder for the rejects.</param>
/// <param name="limits">Limits of reading.</param>
/// <param name="forgotten">Customers of whom no row is kept.</param>
/// <param name="age">Removes old files.</param>
internal sealed class UnknownJobs(Database database, OutputFolder output, ReadingLimits limits, ForgottenCustomers forgotten, RejectAge age)
{
    private const string MarkName = "unknown-jobs.txt";
    private const int LinesAtATime = 50_000;

    /// <summary>Writes the lines of each affected file. A file whose lines match the last load is not read again.</summary>
    /// <param name="sources">The files.</param>
    /// <param name="staged">The staged files.</param>
    /// <param name="cancellation">Checked between lines.</param>
    /// <returns>The staged files, each with the path of its rejected lines.</returns>
    public async Task<IReadOnlyList<StagedFile>> WriteAsync(IReadOnlyList<SourceFile> sources, IReadOnlyList<StagedFile> staged, CancellationToken cancellation)
    {
        var marks = database.Read<FileMark>("queries/session/unknown_job_files.sql").ToDictionary(f => f.SourceOrder, f => $"{f.Lines} {f.Mark}");
        var all = new List<StagedFile>();
        foreach (StagedFile file in staged)
        {
            all.Add(marks.TryGetValue(file.SourceOrder, out string? mark)
                ? await WriteAsync(sources.First(s => s.Order == file.SourceOrder), file, mark, cancellation).ConfigureAwait(false)
                : file);
        }

        return all;
    }

    private async Task<StagedFile> WriteAsync(SourceFile source, StagedFile staged, string mark, CancellationToken cancellation)
    {
        string path = Path.Combine(output.Rejects, RejectFile.NameOfUnknownJobs(source.OwnName));
        string marked = Path.Combine(staged.Folder, MarkName);
        StagedFile written = staged with { RawUnknownJobs = path };
        bool expired = age.IsExpired(path, staged.Folder);
        if ((expired || File.Exists(path)) && File.Exists(marked) && await File.ReadAllTextAsync(marked, cancellation).ConfigureAwait(false) == mark)
        {
            return written;
        }

        try
        {
            await CopyAsync(source, staged, path, cancellation).ConfigureAwait(false);
        }
        catch (FileRefusedException)
        {
            return staged with { Remarks = [.. staged.Remarks, "the file changed since it was staged: its lines of unknown jobs are in the store's list of rejects, and in the rejects folder after the next load"] };
        }

        await File.WriteAllTextAsync(marked, mark, cancellation).ConfigureAwait(false);
        return written;
    }

    private async Task CopyAsync(SourceFile source, StagedFile staged, string path, CancellationToken cancellation)
    {
        ContentScan scan = ContentScan.Read(source.File, limits, cancellation);
        if (scan.Hash != staged.ContentHash)
        {
            throw new FileRefusedException(source.File.Name, FileFaults.Changed);
        }

        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, limits);
        var file = new RejectFile(path, new ColumnNames(table.Header).All, table.Separator, forgotten);
        await using ConfiguredAsyncDisposable closing = file.ConfigureAwait(false);
        using IEnumerator<(int Line, RowFault Fault)> lost = Lines(staged.SourceOrder).GetEnumerator();
        bool more = lost.MoveNext();
        while (table.Reader.Read())
        {
            cancellation.ThrowIfCancellationRequested();
            if (more && table.Reader.Line == lost.Current.Line)
            {
                RowCells cells = table.Reader.Row;
                file.Add(new RejectedRow(lost.Current.Line, lost.Current.Fault, cells.Texts(), RowCleaner.RawText(cells, table.Reader.RawUtf8), MayBeFooter: false));
                more = lost.MoveNext();
            }
        }

        await file.CompleteAsync().ConfigureAwait(false);
    }

    private IEnumerable<(int Line, RowFault Fault)> Lines(int sourceOrder)
    {
        int after = 0;
        IReadOnlyList<OrphanLine> next;
        do
        {
            next = database.Read<OrphanLine>(
                "queries/session/unknown_job_lines.sql", ("source_order", sourceOrder), ("after", after), ("lines", LinesAtATime));
            foreach (OrphanLine line in next)
            {
                yield return (line.SourceLine, new RowFault(line.Field, line.ReasonCode, line.Message, line.Suggestion));
                after = line.SourceLine;
            }
        }
        while (next.Count == LinesAtATime);
    }

    private sealed record FileMark(int SourceOrder, long Lines, string Mark);

    private sealed record OrphanLine(int SourceLine, string Field, string ReasonCode, string Message, string Suggestion);
}
