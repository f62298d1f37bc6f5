namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>The third set of typings: few of the forms that the rules were mended for leak, and few of those held out.</summary>
public sealed class ThirdPlantTests
{
    private const int MostMended = 2;
    private const int MostHeldOut = 8;

    [LongFact]
    public async Task Load_ThirdForms_FewFound()
    {
        using var folder = new ScratchFolder();
        var maker = new ThirdPlantMaker(31);
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), 420, maker.Next);

        // A plant that the search does not find as typed would never be found.
        HashSet<int> searched = [.. new PlantSearch(shop.Plants).FoundIn(string.Join('\n', shop.Plants.Select(p => p.Plant.Typed))).Select(f => f.Plant)];
        Assert.Equal([], shop.Plants.Select(p => p.Plant).Where((_, i) => !searched.Contains(i)).Select(p => p.Typed));
        IReadOnlyList<(int Plant, string File, string Line)> found = await PlantTests.FoundAsync(folder, shop, "load");
        (int all, int heldOut) = (shop.Plants.Count, shop.Plants.Count(p => p.Plant.HeldOut));
        int leakedHeldOut = found.Count(f => shop.Plants[f.Plant].Plant.HeldOut);
        string[] mended =
        [
            .. found.Where(f => !shop.Plants[f.Plant].Plant.HeldOut)
                .Select(f => $"{shop.Plants[f.Plant].Plant.Form} in {shop.Plants[f.Plant].Cell}: {shop.Plants[f.Plant].Plant.Typed} -> {f.File}: {f.Line}"),
        ];
        string counts = $"held out: {leakedHeldOut} of {heldOut}; mended: {mended.Length} of {all - heldOut}";
        TestContext.Current.TestOutputHelper?.WriteLine(counts);
        Assert.True(leakedHeldOut <= MostHeldOut && mended.Length <= MostMended, $"{counts}\n{string.Join('\n', mended)}");
    }
}
