namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>Typings written down before their author read the rules: few of the forms that the rules were mended for leak, and few of those held out.</summary>
public sealed class HeldOutPlantTests
{
    [LongFact]
    public Task Load_ThirdForms_FewFound() => HoldAsync(new ThirdPlantMaker(31), 420, mostMended: 2, mostHeldOut: 8);

    [LongFact]
    public Task Load_FourthForms_FewFound() => HoldAsync(new ThirdPlantMaker(41, "fourth-forms.txt"), 500, mostMended: 6, mostHeldOut: 10);

    private static async Task HoldAsync(ThirdPlantMaker maker, int plants, int mostMended, int mostHeldOut)
    {
        using var folder = new ScratchFolder();
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), plants, maker.Next);

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
        Assert.True(leakedHeldOut <= mostHeldOut && mended.Length <= mostMended, $"{counts}\n{string.Join('\n', mended)}");
    }
}
