using System.Runtime.CompilerServices;
using System.Text.Json;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Stages source files: each alone, a pure function of its bytes and its map, kept by both, so that an unchanged file
/// is never read twice. Nothing but the rejects folder holds a row as it was.
/// </summary>
public sealed class Stager
{
    private const string RecordName = "staged.json";
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };
    private readonly OutputFolder _output;
    private readonly ShopSettings _settings;
    private readonly StagingTools _tools;
    private readonly IProgress<StageProgress>? _progress;
    private readonly Dictionary<string, FileStyle> _styles = new(StringComparer.Ordinal);
    private readonly Stack<RowBatch> _free = [];
    private (ScanAhead? This, ScanAhead? Next) _scans;
    private readonly int _workers;

    /// <summary>Prepares.</summary>
    /// <param name="output">Where staged files and rejects go.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="tools">Key, words, serials.</param>
    /// <param name="progress">Told when the rows of a file begin and now and then after; null: nobody.</param>
    /// <param name="workers">How many clean the rows of a file at a time, 1 or more; null: one a core, four at most. Changes nothing in what is written.</param>
    public Stager(OutputFolder output, ShopSettings settings, StagingTools tools, IProgress<StageProgress>? progress = null, int? workers = null)
    {
        (_output, _settings, _tools, _progress) = (output, settings, tools, progress);
        _workers = workers ?? Math.Clamp(Environment.ProcessorCount, 1, 4);
    }

    /// <summary>Stages one file, or finds it staged.</summary>
    /// <param name="source">The file.</param>
    /// <param name="next">The file that will come after it, which is scanned meanwhile; null: none.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The staged rows; for a file that cannot be read at all, why.</returns>
    /// <exception cref="BadInputException">The map does not suit the file: every fault found.</exception>
    public async Task<StagedFile> StageAsync(SourceFile source, SourceFile? next, CancellationToken cancellation)
    {
        _scans = (_scans.Next, next is null ? null : new ScanAhead(next, next.File.Stamp, Task.Run(() => Scan(next, cancellation), cancellation)));
        try
        {
            return await StageAsync(source, cancellation).ConfigureAwait(false);
        }
        finally
        {
            if (_scans.Next is { } ahead)
            {
                await ((Task)ahead.Scan).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
            else
            {
                _free.Clear();
            }
        }
    }

    /// <summary>Stages one file alone, or finds it staged.</summary>
    public async Task<StagedFile> StageAsync(SourceFile source, CancellationToken cancellation)
    {
        try
        {
            return await StageTwiceAsync(source, cancellation).ConfigureAwait(false);
        }
        catch (FileRefusedException refused)
        {
            return await RefusedFiles.StageAsync(source, refused.Fault, _output.Stage, cancellation).ConfigureAwait(false);
        }
    }

    /// <summary>Removes staged folders and reject files that none of these files uses.</summary>
    public void Tidy(IReadOnlyCollection<StagedFile> used)
    {
        var folders = used.Select(u => u.Folder).ToHashSet(StringComparer.Ordinal);
        foreach (string folder in Directory.Exists(_output.Stage) ? Directory.EnumerateDirectories(_output.Stage).ToList() : [])
        {
            if (!folders.Contains(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        RefusedFiles.List(used, _output.Rejects);
        var raw = used.SelectMany(u => new[] { u.RawRejects, u.RawUnknownJobs }).OfType<string>().ToHashSet(StringComparer.Ordinal);
        if (raw.Count > 0)
        {
            File.WriteAllText(Path.Combine(_output.Rejects, RejectsReadme.Name), RejectsReadme.Text());
        }

        foreach (string file in Directory.Exists(_output.Rejects) ? Directory.EnumerateFiles(_output.Rejects, "*" + RejectFile.Ending).ToList() : [])
        {
            if (!raw.Contains(file))
            {
                File.Delete(file);
            }
        }
    }

    // What wrote to a file while it was read has mostly ended when it is read again.
    private async Task<StagedFile> StageTwiceAsync(SourceFile source, CancellationToken cancellation)
    {
        try
        {
            return await StageOrRefuseAsync(source, cancellation).ConfigureAwait(false);
        }
        catch (FileRefusedException changed) when (changed.Fault == FileFaults.Changed)
        {
            return await StageOrRefuseAsync(source, cancellation).ConfigureAwait(false);
        }
    }

    private async Task<StagedFile> StageOrRefuseAsync(SourceFile source, CancellationToken cancellation)
    {
        ContentScan scan = TakeScan(source, cancellation);
        FileStyle? mendStyle = source.Mends is { } original ? _styles.GetValueOrDefault(original) : null;
        string folder = Path.Combine(_output.Stage, StageKey.Of(source, scan.Hash, _settings, _tools, mendStyle));
        if (Known(folder) is { } known)
        {
            _styles[known.SourceFile] = known.Style;
            return known.ToStagedFile(folder, RawPath(source)) with { FromCache = true };
        }

        string making = folder + ".part";
        if (Directory.Exists(making))
        {
            Directory.Delete(making, recursive: true);
        }

        Directory.CreateDirectory(making);
        _progress?.Report(new StageProgress(source.File.Name, 0, 0, scan.Bytes));
        StageRecord record = await ReadScannedAsync(source, scan, making, mendStyle, cancellation).ConfigureAwait(false);
        await File.WriteAllTextAsync(Path.Combine(making, RecordName), JsonSerializer.Serialize(record, Json), cancellation).ConfigureAwait(false);
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.Move(making, folder);
        _styles[record.SourceFile] = record.Style;
        return record.ToStagedFile(folder, RawPath(source));
    }

    private string RawPath(SourceFile source) => Path.Combine(_output.Rejects, RejectFile.NameOf(source.File.Name));

    private StageRecord? Known(string folder)
    {
        string path = Path.Combine(folder, RecordName);
        if (!File.Exists(path))
        {
            return null;
        }

        StageRecord? record = JsonSerializer.Deserialize<StageRecord>(File.ReadAllText(path), Json);
        bool rejectsThere = record is { Rejected: 0 } || (record is not null && File.Exists(Path.Combine(_output.Rejects, RejectFile.NameOf(record.SourceFile))));
        return rejectsThere ? record : null;
    }

    // A scan made ahead serves once, and only where the file is still the one it was: a fault of then may be none by now,
    // and who comes back has found the file changed.
    private ContentScan TakeScan(SourceFile source, CancellationToken cancellation)
    {
        ScanAhead? made = _scans.This;
        _scans = (null, _scans.Next);
        bool holds = made is not null && made.Source == source && made.Scan.IsCompletedSuccessfully && made.Stamp == source.File.Stamp;
        return holds ? made!.Scan.Result : Scan(source, cancellation);
    }

    private ContentScan Scan(SourceFile source, CancellationToken cancellation) => ContentScan.Of(source.File, _settings.Limits, cancellation);

    // A fault of a file that was changed since its scan may be no more than that.
    private async Task<StageRecord> ReadScannedAsync(SourceFile source, ContentScan scan, string folder, FileStyle? mendStyle, CancellationToken cancellation)
    {
        try
        {
            return await ReadAsync(source, scan, folder, mendStyle, cancellation).ConfigureAwait(false);
        }
        catch (BadInputException fault) when (fault is not FileRefusedException { Fault.Code: ReasonCode.FileChanged or ReasonCode.FileGone })
        {
            if (Scan(source, cancellation).Hash != scan.Hash)
            {
                throw new FileRefusedException(source.File.Name, FileFaults.Changed);
            }

            throw;
        }
    }

    private async Task<StageRecord> ReadAsync(SourceFile source, ContentScan scan, string folder, FileStyle? mendStyle, CancellationToken cancellation)
    {
        string name = source.File.Name;
        (FileStyle style, IReadOnlyList<string> remarks) = mendStyle is null ? Decide(source, scan) : (mendStyle, []);
        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, _settings.Limits);
        var map = new FieldMap(name, source.Map, table.Header);
        var files = new StagedTableFiles(folder);
        await using ConfiguredAsyncDisposable closing = files.ConfigureAwait(false);
        var rejects = new RejectWriter(folder, name, new RejectFile(RawPath(source), new ColumnNames(table.Header).All, table.Separator));
        await using ConfiguredAsyncDisposable closingRejects = rejects.ConfigureAwait(false);
        KindStager[] stagers = [.. Enumerable.Range(0, _workers).Select(_ =>
            Kinds.KindStagers.Make(source.Map.Kind, new StageTarget(files, new FieldMap(name, source.Map, table.Header), _tools)))];
        RowWorker[] workers = [.. stagers.Select(s => new RowWorker(s, new MappedRow(table.Reader.Place, style, source.Mends is not null), table.Header.Count))];
        var gate = new RejectGate(rejects);
        var loop = new RowLoop(table, workers, gate, _free, (rows, bytes) => _progress?.Report(new StageProgress(name, rows, bytes, scan.Bytes)));
        await loop.RunAsync(cancellation).ConfigureAwait(false);
        IReadOnlyList<string> tables = await files.CompleteAsync().ConfigureAwait(false);
        string? rejected = await rejects.CompleteAsync(cancellation).ConfigureAwait(false);
        return new StageRecord
        {
            SourceFile = name,
            Kind = source.Map.Kind,
            ContentHash = scan.Hash,
            SourceOrder = source.Order,
            Tables = tables,
            HasRejects = rejected is not null,
            RowsRead = gate.Rows,
            Rejected = rejects.Rows,
            Footers = gate.Footers,
            RepeatedHeaders = loop.RepeatedHeaders,
            OnePartPerRow = stagers[0].OnePartPerRow,
            Style = style,
            Remarks = remarks,
            UnreadCells = UnreadCells.Sum(workers.SelectMany(w => w.Unread)),
        };
    }

    private (FileStyle Style, IReadOnlyList<string> Remarks) Decide(SourceFile source, ContentScan scan)
    {
        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, _settings.Limits);
        return StyleVote.Decide(table, source.Map, _settings, source.File.Name);
    }

    private sealed record ScanAhead(SourceFile Source, (long Bytes, DateTime Written) Stamp, Task<ContentScan> Scan);
}
