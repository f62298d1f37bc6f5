using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A shop of a few files on disk, loaded as a whole.</summary>
internal sealed class SmallShop : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("partssignal-load-").FullName;
    private Database? _store;

    public SmallShop() => Directory.CreateDirectory(Input);

    public string Input => Path.Combine(_root, "shop");

    public OutputFolder Output => new(Path.Combine(_root, "out"));

    public void Dispose()
    {
        _store?.Dispose();
        Directory.Delete(_root, recursive: true);
    }

    /// <summary>A shop of its own with the same files and the same output.</summary>
    public SmallShop Copy()
    {
        var copy = new SmallShop();
        FolderCopy.Write(_root, copy._root);
        return copy;
    }

    public SmallShop Write(string name, string text)
    {
        string path = Path.Combine(Input, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return this;
    }

    public Task<LoadReport> Load()
    {
        _store?.Dispose();
        _store = null;
        return ShopLoad.RunAsync(Input, Output, ShopFile.Load(Input), TimeProvider.System, null, CancellationToken.None);
    }

    /// <summary>Fills in rows of the lists and drops each list beside the files.</summary>
    public void Answer(params (string List, string Row, string Answer)[] answers)
    {
        foreach (IGrouping<string, (string List, string Row, string Answer)> list in answers.GroupBy(a => a.List))
        {
            string[] lines = List(list.Key);
            foreach ((_, string row, string answer) in list)
            {
                int at = Array.FindIndex(lines, l => l.Contains(row, StringComparison.Ordinal));
                Assert.True(at > 0, $"{list.Key} does not ask about {row}");
                lines[at] = lines[at][..(lines[at].LastIndexOf(',') + 1)] + answer;
            }

            File.WriteAllLines(Path.Combine(Input, list.Key), lines);
        }
    }

    public string[] List(string list) => File.ReadAllLines(Path.Combine(Output.Review, list));

    public Database Open()
    {
        var database = Database.Open(new DatabaseOptions { Threads = 1 });
        StoreTables.Attach(database, StoreSwap.Resolve(Output.Store));
        return database;
    }

    /// <summary>Rows of the store of the last <see cref="Load"/>, all asked in one session.</summary>
    public IReadOnlyList<string> Rows(string query)
    {
        _store ??= Open();
        return _store.Query(query, r => string.Join('|', Enumerable.Range(0, r.FieldCount).Select(i => r.IsDBNull(i) ? "-" : r.GetValue(i) switch
        {
            DateOnly day => day.ToString("yyyy-MM-dd"),
            IFormattable f => f.ToString(null, System.Globalization.CultureInfo.InvariantCulture),
            var text => text.ToString(),
        })));
    }
}

/// <summary>A shop that is loaded once for all tests of a class; a test that changes anything works on a <see cref="Copy"/>.</summary>
public abstract class SharedShop : IAsyncLifetime
{
    private readonly SmallShop _shop = new();

    internal LoadReport Report { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        Write(_shop);
        Report = await _shop.Load();
    }

    public ValueTask DisposeAsync()
    {
        _shop.Dispose();
        return ValueTask.CompletedTask;
    }

    internal OutputFolder Output => _shop.Output;

    internal SmallShop Copy() => _shop.Copy();

    internal Database Open() => _shop.Open();

    internal IReadOnlyList<string> Rows(string query) => _shop.Rows(query);

    internal abstract void Write(SmallShop shop);
}
