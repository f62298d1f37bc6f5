using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class CodeScrubberTests
{
    private static readonly FileWords Words = FileWords.Of(WordSets.Load(null).Complaints, "en");

    [Theory]
    [InlineData("WX4150-B")]
    [InlineData("448030/01")]
    [InlineData("LV 632 B")]
    [InlineData("10572.42")]
    [InlineData("0083529")]
    [InlineData("WX41*0")]
    [InlineData("series 6")]
    [InlineData("N000150000")]
    [InlineData("50x60x70")]
    [InlineData("+12")]
    [InlineData("118-2420010")]
    public void Clean_Code_Stays(string cell) => Assert.Same(cell, CodeScrubber.Clean(cell, "model", Words));

    [Theory]
    [InlineData("WX4150-B (Mrs Kettleby)", "WX4150-B")]
    [InlineData("WX4150-B Kettleby", "WX4150-B")]
    [InlineData("Grace 49-1189", "49-1189")]
    [InlineData("WX4150-B 0117 496 0463", "WX4150-B")]
    [InlineData("WX4150-B ines@example.com", "WX4150-B")]
    [InlineData("0117 496 0463", null)]
    [InlineData("+44117\u20134960463", null)]
    [InlineData("4111 1111 1111 1111", null)]
    [InlineData("ask for Brunhilde", null)]
    [InlineData("callKettleby", null)]
    [InlineData("K E T T L E B Y", null)]
    [InlineData("49-1189 K.e.t.t.l.e.b.y", "49-1189")]
    [InlineData("tel01174960463", null)]
    [InlineData("49-1189 tel01174960463", "49-1189")]
    [InlineData("0117x496x0463", null)]
    [InlineData("212-5550142", null)]
    [InlineData("212-555-0142", null)]
    [InlineData("O117496O463", null)]
    [InlineData("+44 (0)119 612 369 38", null)]
    public void Clean_MoreThanACode_TheCodeOrNothing(string cell, string? left) => Assert.Equal(left, CodeScrubber.Clean(cell, "model", Words));

    [Fact]
    public void Clean_NumberOfAShapeThatTheColumnHolds_Stays()
    {
        const string Part = "0117 496 0463";
        var words = new FileWords(["en"], [], [], ["part\t9999 999 9999"], 5, WordSets.Load(null).Complaints);
        Assert.Same(Part, CodeScrubber.Clean(Part, "part", words));
        Assert.Null(CodeScrubber.Clean(Part, "other_part", words));
    }
}
