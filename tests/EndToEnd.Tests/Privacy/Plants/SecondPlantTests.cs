namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>The second set of typings: those that the rules were mended for do not leak again, and of those held out few do.</summary>
public sealed class SecondPlantTests
{
    private const int MostHeldOutPercent = 5;

    [LongFact]
    public async Task Load_SecondForms_NoneOfThoseMendedForFound()
    {
        using var folder = new ScratchFolder();
        var maker = new SecondPlantMaker(21);
        PlantedShop shop = PlantedShop.Write(folder.Sub("shop"), 400, maker.Next);
        IReadOnlyList<(int Plant, string File, string Line)> found = await PlantTests.FoundAsync(folder, shop, "load");
        Plant[] heldOut = [.. shop.Plants.Select(p => p.Plant).Where(p => p.HeldOut)];
        Plant[] leaked = [.. found.Select(f => shop.Plants[f.Plant].Plant).Where(p => p.HeldOut)];
        TestContext.Current.TestOutputHelper?.WriteLine($"held out: {leaked.Length} of {heldOut.Length} found");
        Assert.True(leaked.Length * 100 <= heldOut.Length * MostHeldOutPercent, $"{leaked.Length} of {heldOut.Length} held out found");

        // The same word may have come out of a cell of a form held out.
        HashSet<string> theirs = new(leaked.SelectMany(p => p.Words), StringComparer.OrdinalIgnoreCase);
        string[] open =
        [
            .. found.Where(f => !shop.Plants[f.Plant].Plant.HeldOut && !shop.Plants[f.Plant].Plant.Words.Any(theirs.Contains))
                .Select(f => $"{shop.Plants[f.Plant].Plant.Form} in {shop.Plants[f.Plant].Cell}: {shop.Plants[f.Plant].Plant.Typed} -> {f.File}: {f.Line}"),
        ];
        Assert.True(open.Length == 0, string.Join('\n', open));
    }
}
