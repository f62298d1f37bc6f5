namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>The second set of typings.</summary>
public sealed class SecondPlantTests
{
    [Fact]
    public async Task Load_SecondForms_NoneFound()
    {
        using var folder = new ScratchFolder();
        int plants = int.Parse(Environment.GetEnvironmentVariable("PLANTS") ?? "600");
        var maker = new SecondPlantMaker(int.Parse(Environment.GetEnvironmentVariable("PLANT_SEED") ?? "21"));
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), plants, maker.Next);
        var search = new PlantSearch(shop.Plants);
        string typed = string.Join('\n', Directory.EnumerateFiles(folder.Sub("shop"), "*.csv").Select(File.ReadAllText));
        int there = search.FoundIn(typed.Replace("-\n", "-")).Select(f => f.Plant).Distinct().Count();
        Partssignal done = await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.True(done.ExitCode != 1, done.Error);
        Partssignal inspected = await Partssignal.RunAsync("inspect", folder.Sub("shop/jobs-en.csv"), folder.Sub("shop/orders.csv"), "--format", "json");
        IEnumerable<(string File, string Text)> all = OutputTexts.Of(folder.Sub("out")).Append(("stdout", done.Out + done.Error)).Append(("inspect", inspected.Out + inspected.Error));
        var found = all.SelectMany(o => search.FoundIn(o.Text).DistinctBy(f => f.Plant).Select(f => (o.File, f.Plant, f.Line))).DistinctBy(f => f.Plant).ToList();
        int held = shop.Plants.Count(p => p.Plant.HeldOut), heldFound = found.Count(f => shop.Plants[f.Plant].Plant.HeldOut);
        File.WriteAllText(Environment.GetEnvironmentVariable("PLANT_REPORT") ?? folder.Sub("r.txt"), $"there {there} of {shop.Plants.Count}; open {found.Count - heldFound} of {shop.Plants.Count - held}; held out {heldFound} of {held}\n"
            + string.Join('\n', found.Where(f => !shop.Plants[f.Plant].Plant.HeldOut).Select(f => $"{shop.Plants[f.Plant].Plant.Form} | {shop.Plants[f.Plant].Cell} | {shop.Plants[f.Plant].Plant.Typed} -> {f.File}: {f.Line}").Order(StringComparer.Ordinal)));
    }
}
