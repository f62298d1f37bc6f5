using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using System.Text.Json;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Stages source files: each alone, a pure function of its bytes and its map, kept by both, so that an unchanged file
/// is never read twice. Nothing but the rejects folder holds a row as it was.
/// </summary>
internal sealed class Stager
{
    private const string RecordName = "staged.json";
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };
    private readonly OutputFolder _output;
    private readonly ShopSettings _settings;
    private readonly StagingTools _tools;
    private readonly Func<string, StageTarget, TableStager> _make;
    private readonly IProgress<StageProgress>? _progress;
    private readonly RejectAge _age;
    private readonly ConcurrentDictionary<string, FileStyle> _styles = new(StringComparer.Ordinal);

    /// <summary>Prepares.</summary>
    /// <param name="output">Where staged files and rejects go.</param>
    /// <param name="settings">What <c>shop.json</c> says.</param>
    /// <param name="tools">Key, words, serials.</param>
    /// <param name="make">Makes the stager of a kind of file.</param>
    /// <param name="progress">Told when the rows of a file begin and now and then after, on the thread that stages it, or null if nobody listens.</param>
    /// <param name="clock">Tells how old files of refused rows are, or null for the system's.</param>
    public Stager(OutputFolder output, ShopSettings settings, StagingTools tools, Func<string, StageTarget, TableStager> make, IProgress<StageProgress>? progress = null, TimeProvider? clock = null)
    {
        (_output, _settings, _tools, _make, _progress) = (output, settings, tools, make, progress);
        _age = new RejectAge(clock ?? TimeProvider.System, settings.RejectsDays);
    }

    /// <summary>Stages one file, or finds it staged. Several may be staged at a time, but none before the file that it mends.</summary>
    /// <param name="source">The file.</param>
    /// <param name="workers">How many clean its rows at a time, 1 or more; changes nothing in what is written.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The staged rows; for a file that cannot be read at all, why.</returns>
    /// <exception cref="BadInputException">The map does not suit the file: every fault found.</exception>
    public async Task<StagedFile> StageAsync(SourceFile source, int workers, CancellationToken cancellation)
    {
        try
        {
            return await StageTwiceAsync(source, workers, cancellation).ConfigureAwait(false);
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
            File.WriteAllText(Path.Combine(_output.Rejects, RejectsReadme.Name), RejectsReadme.Text(_settings.RejectsDays));
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
    private async Task<StagedFile> StageTwiceAsync(SourceFile source, int workers, CancellationToken cancellation)
    {
        try
        {
            return await StageOrRefuseAsync(source, workers, cancellation).ConfigureAwait(false);
        }
        catch (FileRefusedException changed) when (changed.Fault == FileFaults.Changed)
        {
            return await StageOrRefuseAsync(source, workers, cancellation).ConfigureAwait(false);
        }
    }

    private async Task<StagedFile> StageOrRefuseAsync(SourceFile source, int workers, CancellationToken cancellation)
    {
        ContentScan scan = Scan(source, cancellation);
        FileStyle? mendStyle = source.Mends is { } original ? _styles.GetValueOrDefault(original) : null;
        string folder = Path.Combine(_output.Stage, CacheKey.Create(source, scan.Hash, _settings, _tools, mendStyle));
        bool expired = _age.IsExpired(RawPath(source), folder);
        if (Known(folder, source, expired) is { } known)
        {
            _styles[source.OwnName] = known.Style;
            return known.ToStagedFile(folder, RawPath(source)) with { FromCache = true };
        }

        string making = folder + ".part";
        if (Directory.Exists(making))
        {
            Directory.Delete(making, recursive: true);
        }

        Directory.CreateDirectory(making);
        _progress?.Report(new StageProgress(source.OwnName, 0, 0, scan.Bytes));
        StageRecord record = await ReadScannedAsync(source, scan, making, mendStyle, workers, cancellation).ConfigureAwait(false);
        await File.WriteAllTextAsync(Path.Combine(making, RecordName), JsonSerializer.Serialize(record, Json), cancellation).ConfigureAwait(false);
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.Move(making, folder);
        _styles[source.OwnName] = record.Style;
        return record.ToStagedFile(folder, RawPath(source));
    }

    private string RawPath(SourceFile source) => Path.Combine(_output.Rejects, RejectFile.NameOf(source.OwnName));

    private StageRecord? Known(string folder, SourceFile source, bool expired)
    {
        string path = Path.Combine(folder, RecordName);
        if (!File.Exists(path))
        {
            return null;
        }

        StageRecord? record = JsonSerializer.Deserialize<StageRecord>(File.ReadAllText(path), Json);
        bool rejectsThere = record is { HasRawRejects: false } || (record is not null && (expired || File.Exists(RawPath(source))));
        return rejectsThere ? record : null;
    }

    private ContentScan Scan(SourceFile source, CancellationToken cancellation) => ContentScan.Read(source.File, _settings.Limits, cancellation);

    // A fault of a file that was changed since its scan may be no more than that.
    private async Task<StageRecord> ReadScannedAsync(SourceFile source, ContentScan scan, string folder, FileStyle? mendStyle, int workers, CancellationToken cancellation)
    {
        try
        {
            return await ReadAsync(source, scan, folder, mendStyle, workers, cancellation).ConfigureAwait(false);
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

    private async Task<StageRecord> ReadAsync(SourceFile source, ContentScan scan, string folder, FileStyle? mendStyle, int workers, CancellationToken cancellation)
    {
        (FileStyle style, IReadOnlyList<string> remarks, RowHabits habits, FileWords words) = Decide(source, scan, mendStyle);
        while (true)
        {
            var rare = new RareValues();
            StageRecord record = await ReadRowsAsync(source, scan, folder, new Decisions(style, remarks, habits, words, rare), workers, cancellation).ConfigureAwait(false);

            // A brand or a technician that only comes up far down the file is known by now; the rows are read once more.
            IReadOnlyList<string> common = rare.Common(words.Fewest);
            if (common.Count == 0)
            {
                return record;
            }

            words = words.With(common);
        }
    }

    private async Task<StageRecord> ReadRowsAsync(SourceFile source, ContentScan scan, string folder, Decisions decided, int workers, CancellationToken cancellation)
    {
        string name = source.File.Name;
        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, _settings.Limits);
        IReadOnlyList<string> names = new ColumnNames(table.Header).All;
        var files = new StagedTableFiles(folder);
        await using ConfiguredAsyncDisposable closing = files.ConfigureAwait(false);
        var rejects = new RejectWriter(folder, name, new RejectFile(RawPath(source), names, table.Separator, _tools.Forgotten));
        await using ConfiguredAsyncDisposable closingRejects = rejects.ConfigureAwait(false);
        RowCleaner[] cleaners = [.. Enumerable.Range(0, workers).Select(_ => Cleaner(workers > 1 ? new RowCells() : table.Reader.Row))];
        var gate = new FooterFilter(rejects);
        rejects.AddTitles(table.Titles);
        var rows = new DataRows(table, (read, bytes) => _progress?.Report(new StageProgress(source.OwnName, read, bytes, scan.Bytes)), decided.Style);
        await (workers > 1
            ? new ParallelStager(rows, [.. cleaners.Select(c => new RowWorker(c))], gate).RunAsync(cancellation)
            : new SequentialStager(rows, cleaners[0], gate).RunAsync(cancellation)).ConfigureAwait(false);
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
            HasRawRejects = rejects.Rows + rejects.NotData > 0,
            RowsRead = gate.Rows,
            Rejected = rejects.Rows,
            Footers = gate.Footers,
            RepeatedHeaders = gate.RepeatedHeaders,
            Titles = table.Titles.Count,
            OnePartPerRow = cleaners[0].Stager.OnePartPerRow,
            Style = decided.Style,
            Remarks = decided.Remarks,
            UnreadCells = UnreadCells.Sum(cleaners.SelectMany(c => c.Unread)),
            Languages = decided.Words.Languages,
        };

        RowCleaner Cleaner(RowCells cells)
        {
            // A map of its own: the order in which a stager asks for its fields is the order of the row's digest.
            var personal = new PersonalCells(new FieldMap(name, source.Map, table.Header), decided.Words, _tools, _settings.Technicians == "initials", decided.Rare);
            return new RowCleaner(
                _make(source.Map.Kind, new StageTarget(files, new FieldMap(name, source.Map, table.Header), _tools, personal, decided.Habits)),
                new MappedRow(cells, (column, line) => Place(table, names, column, line), decided.Style, source.Mends is not null),
                table.Header,
                decided.Habits);
        }
    }

    private static string Place(OpenedTable table, IReadOnlyList<string> names, int column, int line)
    {
        string place = table.Reader.Place(column, line);
        return column < table.Header.Count && table.Header[column].Length > 0 ? $"{place} ({names[column]})" : place;
    }

    private (FileStyle Style, IReadOnlyList<string> Remarks, RowHabits Habits, FileWords Words) Decide(SourceFile source, ContentScan scan, FileStyle? mendStyle)
    {
        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, _settings.Limits);
        var sample = new RowSample();
        var fields = new FieldMap(source.File.Name, source.Map, table.Header);
        var census = new WordCensus(source.Map.Kind, fields, _settings.Technicians == "initials");
        (FileStyle style, IReadOnlyList<string> remarks) = mendStyle is null ? StyleVote.Decide(table, source.Map, _settings, source.File.Name, sample, census) : (mendStyle with { CarriedDay = -1 }, []);
        sample.TakeAll(table.Reader, census);

        // A row that a person has corrected is as it should be.
        IReadOnlyList<TextColumnPlace> texts = source.Mends is null ? TextColumnPlace.Of(source.Map.Kind, source.Map, fields) : [];
        return (style, remarks, RowHabits.Of(table.Header, sample.Rows, texts), census.Decide(_tools.Words.Complaints));
    }

    private sealed record Decisions(FileStyle Style, IReadOnlyList<string> Remarks, RowHabits Habits, FileWords Words, RareValues Rare);
}
