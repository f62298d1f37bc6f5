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

    public SmallShop() => Directory.CreateDirectory(Input);

    public string Input => Path.Combine(_root, "shop");

    public OutputFolder Output => new(Path.Combine(_root, "out"));

    public void Dispose() => Directory.Delete(_root, recursive: true);

    public SmallShop Write(string name, string text)
    {
        string path = Path.Combine(Input, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return this;
    }

    public Task<LoadReport> Load() => ShopLoad.RunAsync(Input, Output, ShopFile.Load(Input), TimeProvider.System, null, CancellationToken.None);

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

    public IReadOnlyList<string> Rows(string query)
    {
        using Database store = Open();
        return store.Query(query, r => string.Join('|', Enumerable.Range(0, r.FieldCount).Select(i => r.IsDBNull(i) ? "-" : r.GetValue(i) switch
        {
            DateOnly day => day.ToString("yyyy-MM-dd"),
            IFormattable f => f.ToString(null, System.Globalization.CultureInfo.InvariantCulture),
            var text => text.ToString(),
        })));
    }
}
