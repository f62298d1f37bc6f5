namespace PartsSignal.EndToEnd.Tests.Privacy;

/// <summary>Nothing personal leaves the rejects folder: looked for in every file that a whole run writes.</summary>
[Collection(RunSmallShopFixture.Collection)]
public sealed class PrivacyTests(RunSmallShopFixture shop)
{
    private static readonly string[] Forms = [".parquet", ".csv", ".xlsx", ".json", ".html", ".txt"];

    [Fact]
    public void Run_SmallShop_NothingPersonalInAnyOutput() => AssertNothingPersonal(shop.Input, shop.Out, 1_500);

    [SlowFact]
    public async Task Run_WholeSample_NothingPersonalInAnyOutput()
    {
        using var folder = new ScratchFolder();
        Assert.Equal(0, (await Partssignal.RunAsync("run", "--input", RepositoryFolder.SampleShop, "--out", folder.Sub("out"))).ExitCode);
        AssertNothingPersonal(RepositoryFolder.SampleShop, folder.Sub("out"), 3_000);
    }

    [Fact]
    public async Task Load_EveryKindOfPersonalDataInFreeText_FoundInNoOutput()
    {
        using var folder = new ScratchFolder();
        string[] planted = ["Ottilie Farnsworth", "07700 900461", "ottilie.f@example.org", "12 Lindenmoor Street", "4111 1111 1111 1111", "+44 20 7946 0109"];
        folder.Write("shop/jobs.csv", $"""
            Job,Opened,Customer,Phone,Address,Mail,Model,Complaint,Outcome
            1,2026-08-03,{planted[0]},{planted[1]},{planted[3]},{planted[2]},WX4150-B,"does not fill, ask for Mrs Farnsworth, {planted[0]} pays by card {planted[4]}",fixed
            2,2026-08-14,{planted[0]},{planted[1]},{planted[3]},{planted[2]},WX4150-B,"leaks, lives at {planted[3]}, ring {planted[1]} or {planted[5]}, mail {planted[2]}",fixed

            """);
        Assert.Equal(0, (await Partssignal.RunAsync("inspect", folder.Sub("shop/jobs.csv"), "--write")).ExitCode);
        Partssignal load = await Partssignal.RunAsync("load", "--input", folder.Sub("shop"), "--out", folder.Sub("out"));
        Assert.Equal(0, load.ExitCode);
        var personal = new PersonalData();
        Array.ForEach(planted, personal.Add);
        Assert.Equal(planted.Length, personal.Count);
        Assert.Equal(planted.Length, personal.FoundIn(File.ReadAllText(folder.Sub("shop/jobs.csv"))).Distinct().Count());
        Assert.All(OutputTexts.Of(folder.Sub("out")), o => Assert.Empty(personal.FoundIn(o.Text)));
        Assert.Empty(personal.FoundIn(load.Out + load.Error));
    }

    [Fact]
    public void Run_OutputFolder_ForItsOwnerAlone()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows has other rights");
            return;
        }

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(shop.Out));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(shop.Out, "identity.key")));
    }

    private static void AssertNothingPersonal(string input, string output, int fewest)
    {
        var personal = PersonalData.Of(input);
        Assert.True(personal.Count > fewest, $"{personal.Count}");
        var forms = new HashSet<string>();
        var found = new SortedSet<string>(StringComparer.Ordinal);
        foreach ((string file, string text) in OutputTexts.Of(output))
        {
            forms.Add(Path.GetExtension(file));
            found.UnionWith(personal.FoundIn(text).Select(p => $"{file}: {p}"));
        }

        Assert.Empty(found);
        Assert.Empty(Forms.Except(forms));
    }
}
