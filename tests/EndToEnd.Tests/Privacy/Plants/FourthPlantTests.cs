namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>The fourth set of typings, written down before the rules were read: few of the forms that the rules were mended for leak, and few of those held out.</summary>
public sealed class FourthPlantTests
{
    private const int MostMended = 6;
    private const int MostHeldOut = 10;

    [LongFact]
    public async Task Load_FourthForms_FewFound()
    {
        using var folder = new ScratchFolder();
        var maker = new ThirdPlantMaker(41, "fourth-forms.txt");
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), 500, maker.Next);

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
