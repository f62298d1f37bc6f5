using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Tests.Transform;

namespace PartsSignal.Pipeline.Tests.Commands;

public sealed class PartCommandTests(PartStore store) : IClassFixture<PartStore>
{
    [Theory]
    [InlineData("AB-100", "exact")]
    [InlineData("ab150", "compact")]
    [InlineData("771", "alias")]
    [InlineData("AB-2OO", "confusable")]
    public async Task Part_AnyOfItsNumbers_AnswersForTheCurrentOne(string typed, string basis)
    {
        (int code, string text, _) = await Run("part", typed, "--format", "json");
        JsonNode card = JsonNode.Parse(text)!;
        Assert.Equal(ExitCode.Done, code);
        Assert.Equal("AB-200", (string)card["current_number"]!);
        Assert.Equal(basis, (string)card["found_by"]!);
        Assert.Equal(2, (int)card["fitted_on_jobs"]!);
        Assert.Equal(0.5, (double)card["early_failure_share"]!["value"]!);
        Assert.Equal(["AB-100", "AB-150"], card["arrows"]!.AsArray().Select(a => (string)a!["old_number"]!));
        Assert.Equal("F1", (string)card["families"]![0]!["model_family"]!);
        JsonNode supplier = card["suppliers"]![0]!;
        Assert.Equal((2, 5, 5.0), ((int)supplier["lines"]!, (int)supplier["pieces"]!, (double)supplier["median_days"]!));
        Assert.Equal(5.8, (double)supplier["days_90"]!, 9);
        Assert.Equal(0.2, (double)supplier["returned_share"]!, 9);
        Assert.Equal(2, (int)card["on_hand"]![0]!["on_hand"]!);
        Assert.Equal(20m, (decimal)card["prices"]![0]!["highest_cost"]!);
    }

    [Fact]
    public async Task Part_AsOf_StopsAtTheArrowsKnownThen()
    {
        (_, string text, _) = await Run("part", "AB-100", "--as-of", "2022-12-31", "--format", "json");
        Assert.Equal("AB-150", (string)JsonNode.Parse(text)!["current_number"]!);
    }

    [Fact]
    public async Task Part_Unknown_SuggestsAndFails()
    {
        (int code, string text, string error) = await Run("part", "AB-210");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Empty(text);
        Assert.Contains("AB-200", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("??")]
    public async Task Part_NumberWithoutLetterOrDigit_SaysSo(string typed)
    {
        (int code, string text, string error) = await Run("part", typed);
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Empty(text);
        Assert.Contains($"NUMBER '{typed}' has no letters or digits.", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Part_KitBehindAnOldNumber_ListsItsPieces()
    {
        (_, string text, _) = await Run("part", "k500", "--format", "json");
        Assert.Equal(
            ["P-701 1 kit_part", "P-702 3 kit_part"],
            JsonNode.Parse(text)!["replacements"]!.AsArray().Select(r => $"{r!["number"]} {r["quantity"]} {r["via"]}"));
        (_, text, _) = await Run("part", "K-500");
        Assert.Contains("are for P-701", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Part_InACircle_StandsForItselfAndSaysSo()
    {
        (int code, string text, _) = await Run("part", "Z-802");
        Assert.Equal(ExitCode.Done, code);
        Assert.Contains("in a circle           yes", text, StringComparison.Ordinal);
        Assert.Contains("current number        Z-802", text, StringComparison.Ordinal);
        Assert.Contains("Replacement loop", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Part_Csv_HoldsTheWholeCard()
    {
        (_, string text, _) = await Run("part", "AB-100", "--format", "csv");
        string[] lines = text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("section,row,name,value", lines[0]);
        Assert.Contains(",,current_number,AB-200", lines);
        Assert.Contains("arrows,2,old_number,AB-150", lines);
        Assert.Contains("suppliers,1,median_days,5", lines);
        Assert.Contains("early_failure_share,,value,0.5", lines);
        Assert.Contains("on_hand,1,on_hand,2", lines);
    }

    [Theory]
    [InlineData("AB-100")]
    [InlineData("K-500")]
    [InlineData("Z-801")]
    public async Task Part_Table_FitsEightyColumns(string number)
    {
        (_, string text, _) = await Run("part", number);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    private async Task<(int Code, string Out, string Error)> Run(params string[] args)
    {
        var output = new StringWriter();
        var error = new StringWriter();
        int code = await CommandHost.RunAsync([.. args, "--out", store.Out], output, error, TimeProvider.System);
        return (code, output.ToString(), error.ToString());
    }
}

/// <summary>A store with numbers of every kind: replaced ones, a kit, an alias and a loop.</summary>
public sealed class PartStore : IDisposable
{
    public string Out { get; } = Directory.CreateTempSubdirectory("partssignal-part-").FullName;

    public PartStore()
    {
        using var shop = new TransformShop();
        shop.Add(new StagedPart("AB-200") { SourceOrder = 1, Description = "Inlet valve", Component = "inlet_valve", Price = 19.95m })
            .Add(
                new StagedArrow("AB-100", "AB-150") { SourceOrder = 2, EffectiveOn = new(2020, 1, 1) },
                new StagedArrow("AB-150", "AB-200") { SourceOrder = 2, EffectiveOn = new(2023, 1, 1) },
                new StagedArrow("K-500", "K-600") { SourceOrder = 2 },
                new StagedArrow("K-600", "P-701") { SourceOrder = 2, Kind = "kit_part" },
                new StagedArrow("K-600", "P-702") { SourceOrder = 2, Kind = "kit_part", Quantity = 3 },
                new StagedArrow("Z-801", "Z-802") { SourceOrder = 2 },
                new StagedArrow("Z-802", "Z-801") { SourceOrder = 2 })
            .Add(new StagedAlias("Brix", "77.1", "AB-100") { SourceOrder = 3 })
            .Add(new StagedModel("WE1", "F1") { SourceOrder = 8 })
            .Add(
                new StagedOrder("O1", "Brix", "77.1") { SourceOrder = 4, OrderedOn = new(2024, 1, 1), ReceivedOn = new(2024, 1, 5), Quantity = 4, UnitCost = 18m, ReturnedQuantity = 1 },
                new StagedOrder("O2", "Brix", "AB-200") { SourceOrder = 4, OrderedOn = new(2024, 2, 1), ReceivedOn = new(2024, 2, 7), UnitCost = 20m })
            .Add(
                new StagedJob("J1") { SourceOrder = 5, SerialKey = "s1", ModelRaw = "WE1", OpenedOn = new(2023, 5, 1), ClosedOn = new(2023, 5, 1) },
                new StagedJob("J2") { SourceOrder = 5, SerialKey = "s1", ModelRaw = "WE1", OpenedOn = new(2023, 6, 1), ClosedOn = new(2023, 6, 1) },
                new StagedJob("J3") { SourceOrder = 5, OpenedOn = new(2024, 5, 1), ClosedOn = new(2024, 5, 1), Outcome = "no_fault_found" })
            .Add(
                new StagedJobPart("J1", "AB-100") { SourceOrder = 5, SourceLine = 2 },
                new StagedJobPart("J2", "AB 150") { SourceOrder = 5, SourceLine = 3 })
            .Add(new StagedCount("1", "AB-150", 2) { SourceOrder = 6, CountedOn = new(2024, 4, 30) })
            .Combine();
        StorePublisher.Publish(shop.Database, new StoreSwap(Path.Combine(Out, "store")), TimeProvider.System);
    }

    public void Dispose() => Directory.Delete(Out, recursive: true);
}
