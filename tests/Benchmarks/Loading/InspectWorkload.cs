using System.Globalization;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>What <c>inspect</c> does with a folder of twenty tables, once it has run before: the sample shop's lists and orders, and its job logs blown up.</summary>
public sealed class InspectWorkload : IWorkload, IDisposable
{
    private const int Files = 20;
    private string? _folder;

    /// <inheritdoc/>
    public string Name => "inspect";

    /// <inheritdoc/>
    public int DefaultSize => 100_000;

    /// <inheritdoc/>
    public string Unit => "rows";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        Dispose();
        _folder = Directory.CreateTempSubdirectory("partssignal-inspect-").FullName;
        string one = Directory.CreateDirectory(Path.Combine(_folder, "lists")).FullName;
        BigShop.Write(one, 1_000, 1);
        File.Delete(Directory.EnumerateFiles(one, BigShop.Logs).Single());
        int lists = ShopTables.In(one, new ReadingLimits()).Count;
        string shop = Directory.CreateDirectory(Path.Combine(_folder, "shop")).FullName;
        BigShop.Write(shop, size - ShopTables.In(one, new ReadingLimits()).Sum(f => File.ReadLines(Path.Combine(one, f.Name)).LongCount() - 1), Files - lists);
        Inspect();
    }

    /// <inheritdoc/>
    public string Run()
    {
        ShopInspection found = Inspect();
        string result = string.Create(CultureInfo.InvariantCulture, $"{found.Tables.Count} tables, {found.Tables.Sum(t => t.Rows):N0} rows, {found.Questions.Count} questions");
        Dispose();
        return result;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_folder is not null)
        {
            Directory.Delete(_folder, recursive: true);
            _folder = null;
        }
    }

    private ShopInspection Inspect()
    {
        string shop = Path.Combine(_folder!, "shop");
        return new Inspector(new ReadingLimits(), WordSets.Load(shop)).Inspect(ShopTables.In(shop, new ReadingLimits()), CancellationToken.None);
    }
}
