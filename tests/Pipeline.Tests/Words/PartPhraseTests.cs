using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

/// <summary>What the words of a part's description name.</summary>
public sealed class PartPhraseTests
{
    [Theory]
    [InlineData("O-Ring Satz", "oring")]
    [InlineData("o ring 12 mm", "oring")]
    [InlineData("MTR, AUGER", "auger_motor")]
    [InlineData("Door gadget spring", "door_gadget_spring")]
    [InlineData("Set", null)]
    public void Name_Description_ItsTellingWords(string description, string? name) => Assert.Equal(name, PartPhrase.Parse(description).Name);
}
