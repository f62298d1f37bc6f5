namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>Whatever people type where, none of it is found outside the rejects folder.</summary>
public sealed class PlantTests
{
    [Fact]
    public Task Load_FiveHundredPlants_NoneFoundOutsideRejects() => AssertNoneAsync(500, 11, "load");

    [SlowFact]
    public Task Run_FiveThousandPlants_NoneFoundOutsideRejects() => AssertNoneAsync(5_000, 12, "run");

    /// <summary>Runs the program over a shop and looks for its plants in all that it writes and says.</summary>
    internal static async Task<IReadOnlyList<(int Plant, string File, string Line)>> FoundAsync(ScratchFolder folder, PlantedShop shop, string verb)
    {
        var search = new PlantSearch(shop.Plants);
        string typed = string.Join('\n', Directory.EnumerateFiles(folder.Sub("shop"), "*.csv").Select(File.ReadAllText));
        Assert.True(search.FoundIn(typed).Select(f => f.Plant).Distinct().Count() > shop.Plants.Count * 9 / 10);
        // Identifiers are made with the key: with one of its own each run, a short code could stand in one of them by chance.
        string key = Path.Combine(Directory.CreateDirectory(folder.Sub("out")).FullName, "identity.key");
        await File.WriteAllBytesAsync(key, [.. Enumerable.Range(0, 32).Select(i => (byte)i)], TestContext.Current.CancellationToken);
        Partssignal done = await Partssignal.RunAsync(verb, "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.True(done.ExitCode != 1, done.Error);
        Partssignal inspected = await Partssignal.RunAsync("inspect", folder.Sub("shop/jobs-en.csv"), folder.Sub("shop/orders.csv"), "--format", "json");
        IEnumerable<(string File, string Text)> all = OutputTexts.Of(folder.Sub("out")).Append(("stdout", done.Out + done.Error)).Append(("inspect", inspected.Out + inspected.Error));
        return [.. all.SelectMany(o => search.FoundIn(o.Text).DistinctBy(f => f.Plant).Select(f => (f.Plant, o.File, f.Line))).DistinctBy(f => f.Plant)];
    }

    private static async Task AssertNoneAsync(int plants, int seed, string verb)
    {
        using var folder = new ScratchFolder();
        var maker = new PlantMaker(seed);
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), plants, (_, _) => maker.Next());
        Assert.True(shop.Plants.Count >= plants);
        string[] found =
        [
            .. (await FoundAsync(folder, shop, verb))
                .Select(f => $"{(shop.Plants[f.Plant].Plant.HeldOut ? "held out, " : "")}{shop.Plants[f.Plant].Plant.Form} in {shop.Plants[f.Plant].Cell}: {shop.Plants[f.Plant].Plant.Typed} -> {f.File}: {f.Line}")
                .Order(StringComparer.Ordinal),
        ];
        Assert.True(found.Length == 0, $"{found.Length} of {shop.Plants.Count} found:\n{string.Join('\n', found)}");
    }
}
