using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Running;
using PartsSignal.SampleShop;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A generated shop, loaded once, with its truth and its own lists beside the store.</summary>
public sealed class LoadedSample : IAsyncLifetime
{
    private readonly SmallShop _shop = new();

    /// <summary>True: the shop of the repository, six years and 20,000 jobs; false: a small one made anew.</summary>
    public bool Committed { get; init; }

    /// <summary>Seed of a shop made anew.</summary>
    public long Seed { get; init; } = 7;

    /// <summary>About how many jobs it has.</summary>
    public int Jobs { get; init; } = 1500;

    /// <summary>True: without the shop's own table of date codes, so that they must be learned.</summary>
    public bool WithoutDateCodes { get; init; }

    internal LoadReport Report { get; private set; } = null!;

    public async ValueTask InitializeAsync()
    {
        if (Committed)
        {
            Copy("");
            Copy("truth");
        }
        else
        {
            SampleShopMaker.Write(new SampleShopOptions(Jobs, Seed, _shop.Input) { WithDemand = false });
        }

        if (WithoutDateCodes)
        {
            File.Delete(System.IO.Path.Combine(_shop.Input, "serial-codes.csv"));
        }

        Report = await _shop.Load();
    }

    public ValueTask DisposeAsync()
    {
        _shop.Dispose();
        return ValueTask.CompletedTask;
    }

    /// <summary>A review list as written.</summary>
    public IReadOnlyList<string> List(string name) => _shop.List(name);

    /// <summary>The rows of a query kept among the test data.</summary>
    public IReadOnlyList<T> Read<T>(string query, Func<System.Data.Common.DbDataReader, T> row)
    {
        using Database store = _shop.Open();
        store.Execute($"create table truth as from read_csv({Path("truth", "jobs.csv.gz")}, types = {{'job_id': 'varchar'}})");
        store.Execute($"create table lives as from read_csv({Path("truth", "lives.csv")}, all_varchar = true)");
        store.Execute($"create table listed_arrows as select \"Old number\" as old_number from read_csv({Path("superseded.csv")}, all_varchar = true)");
        store.Execute($"create table listed_aliases as select \"Their number\" as alias from read_csv({Path("supplier-numbers.csv")}, all_varchar = true)");
        return store.Query(File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "TestData", query)), row);
    }

    private void Copy(string folder)
    {
        Directory.CreateDirectory(System.IO.Path.Combine(_shop.Input, folder));
        foreach (string file in Directory.EnumerateFiles(System.IO.Path.Combine(RepositoryFolder.SampleShop, folder)))
        {
            File.Copy(file, System.IO.Path.Combine(_shop.Input, folder, System.IO.Path.GetFileName(file)));
        }
    }

    private string Path(params string[] parts) => Database.Literal(System.IO.Path.Combine([_shop.Input, .. parts]));
}
