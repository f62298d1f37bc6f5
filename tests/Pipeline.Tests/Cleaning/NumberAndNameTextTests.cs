using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Tests.Cleaning;

public sealed class NumberAndNameTextTests
{
    [Theory]
    [InlineData("376.7460 - Trommelrolle", "376.7460", "Trommelrolle")]
    [InlineData("AB12-7 – drain pump", "AB12-7", "drain pump")]
    [InlineData("Drum roller: 40118", "40118", "Drum roller")]
    [InlineData("40118 | door seal, grey", "40118", "door seal, grey")]
    public void TryRead_NumberAndName_GivesBoth(string cell, string number, string name) =>
        Assert.Equal((true, number, name), (NumberAndNameText.TryRead(cell, out string n, out string w), n, w));

    [Theory]
    [InlineData(null)]
    [InlineData("376.7460")]
    [InlineData("drain pump - new")]
    [InlineData("AB 12 - LEFT")]
    [InlineData("40118 - 7731")]
    [InlineData("40118-L")]
    [InlineData("40118 - L")]
    [InlineData("pump - 230 V")]
    public void TryRead_AnythingElse_GivesNeither(string? cell) => Assert.False(NumberAndNameText.TryRead(cell, out _, out _));
}
