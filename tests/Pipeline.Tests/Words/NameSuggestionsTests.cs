using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class NameSuggestionsTests
{
    private static readonly string[] Names = ["belt", "drain_pump", "inlet_hose", "inlet_valve", "water_valve"];

    [Theory]
    [InlineData("inletvalv", "inlet_valve")]
    [InlineData("Inlet valve", "inlet_valve")]
    [InlineData("bell", "belt")]
    [InlineData("drian_pmup", "drain_pump")]
    [InlineData("thermostat", "")]
    public void Misspelled_NearlyAName_FindsIt(string typed, string expected) => Assert.Equal(expected, string.Join(' ', NameSuggestions.Misspelled(typed, Names, 3)));

    [Fact]
    public void Find_SharedWords_MostSharedFirst() => Assert.Equal(["inlet_valve", "inlet_hose", "water_valve"], NameSuggestions.Find("valve at the inlet", Names, 3));
}
