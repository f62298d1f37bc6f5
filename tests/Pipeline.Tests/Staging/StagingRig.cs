using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>A shop in a folder of its own: write files, stage them, ask the staged rows.</summary>
internal sealed class StagingRig : IDisposable
{
    // One session for all tests: opening one takes longer than most queries.
    private static readonly Database Reader = Database.Open(new DatabaseOptions { Threads = 1 });
    private static readonly Lock Asking = new();
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-").FullName;

    public StagingRig() => Directory.CreateDirectory(Input);

    public string Input => Path.Combine(_root, "in");

    public OutputFolder Output => new(Path.Combine(_root, "out"));

    public static StagingTools Tools { get; } = new(new IdentityKey(new byte[32]), WordSets.Load(null), (_, _) => default, "none");

    public void Write(string name, string text) => Write(name, System.Text.Encoding.UTF8.GetBytes(text));

    public void Write(string name, byte[] bytes)
    {
        string path = Path.Combine(Input, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
    }

    public async Task<IReadOnlyList<StagedFile>> StageAllAsync(ShopSettings settings, IProgress<StageProgress>? progress = null)
    {
        var stager = new Stager(Output, settings, Tools, TableStagers.Make, progress);
        var staged = new List<StagedFile>();
        var beside = new Stager(new OutputFolder(Path.Combine(_root, "beside")), settings, Tools, TableStagers.Make);
        foreach (SourceFile source in SourceFile.Find(Input, settings))
        {
            staged.Add(await stager.StageAsync(source, 1, CancellationToken.None));
            if (progress is null)
            {
                // One thread or several: every test of a file is a test that they write the same.
                AssertSame(staged[^1], await beside.StageAsync(source, 2, CancellationToken.None));
            }
        }

        stager.Tidy(staged);
        return staged;
    }

    public async Task<StagedFile> StageAsync(string name, string text, SourceMap map)
    {
        Write(name, text);
        return (await StageAllAsync(new ShopSettings { Sources = [map with { Files = name }] })).Single();
    }

    /// <summary>Staged rows as text, <c>|</c> between cells, in file order; null shows as <c>-</c>.</summary>
    public static IReadOnlyList<string> Rows(StagedFile file, string table, string columns)
    {
        if (!file.Tables.TryGetValue(table, out string? path))
        {
            return [];
        }

        return Query(path, columns);
    }

    public static IReadOnlyList<string> Rejects(StagedFile file) =>
        file.Rejects is null ? [] : Query(file.Rejects, "source_line, field, reason_code");

    public static IReadOnlyList<string> Messages(StagedFile file) =>
        file.Rejects is null ? [] : Query(file.Rejects, "message, suggestion");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private static void AssertSame(StagedFile one, StagedFile other)
    {
        Assert.Equal(one.Tables.Keys.Order(StringComparer.Ordinal), other.Tables.Keys.Order(StringComparer.Ordinal));
        Assert.All(one.Tables, t => Assert.Equal(File.ReadAllBytes(t.Value), File.ReadAllBytes(other.Tables[t.Key])));
        Assert.Equal(one.RawRejects is null ? null : File.ReadAllText(one.RawRejects), other.RawRejects is null ? null : File.ReadAllText(other.RawRejects));
        Assert.Equal((one.RowsRead, one.Rejected, one.Footers, one.NotData, one.Refused), (other.RowsRead, other.Rejected, other.Footers, other.NotData, other.Refused));
        Assert.Equal(one.UnreadCells, other.UnreadCells);
    }

    private static IReadOnlyList<string> Query(string path, string columns)
    {
        int width = columns.Split(',').Length;
        lock (Asking)
        {
            return Reader.Query($"from read_parquet({Database.Literal(path)}) select {columns}", r => string.Join('|', Enumerable.Range(0, width).Select(i => r.IsDBNull(i) ? "-" : Convert.ToString(r.GetValue(i) is DateOnly d ? d.ToString("yyyy-MM-dd", null) : r.GetValue(i), System.Globalization.CultureInfo.InvariantCulture))));
        }
    }
}
