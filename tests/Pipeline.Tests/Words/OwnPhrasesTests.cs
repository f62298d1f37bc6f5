using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Words;

public sealed class OwnPhrasesTests
{
    private static readonly HashSet<string> Function = ["the", "a", "at", "is", "it", "and"];

    [Fact]
    public void Find_FrequentPhrase_IsAKindNamedByItsWords() => Assert.Equal(
        [new OwnPhrase("dispenser_no_water", "dispenser no water", 30)],
        Find(("dispenser no water", 20), ("no water at the dispenser", 5), ("dispenser, no water", 0), ("the dispenser no water, call", 10)));

    [Fact]
    public void Find_PhraseOfFewCalls_IsNone() => Assert.Empty(Find(("dispenser no water", 7)));

    [Fact]
    public void Find_OfficeTalk_IsNone() => Assert.Empty(Find(("please call tomorrow", 50), ("new machine bought last year", 40)));

    [Fact]
    public void Find_MostCallsHaveTheLongerPhrase_TheLongerIsTaken() => Assert.Equal(
        ["lid hinge bent"], Find(("lid hinge bent", 40), ("lid hinge", 5)).Select(p => p.Words));

    [Fact]
    public void Find_CutText_DoesNotJoinWhatStoodAroundIt() => Assert.Empty(Find(("lid [name] hinge", 50)));

    [Fact]
    public void Find_NotWorking_TellsEnough() => Assert.Equal(["not working"], Find(("not working", 50), ("it is not working", 9)).Select(p => p.Words));

    [Fact]
    public void Find_AnyTexts_EveryPhraseIsInSoManyCalls()
    {
        string[] words = ["lid", "hinge", "not", "bent", "rack", "tray", "jam"];
        var random = new Random(3);
        (string Text, long Times)[] texts = [.. Enumerable.Range(0, 200).Select(_ => (string.Join(' ', Enumerable.Range(0, random.Next(1, 6)).Select(_ => words[random.Next(words.Length)])), (long)random.Next(1, 5)))];
        IReadOnlyList<OwnPhrase> found = Find(texts);
        Assert.NotEmpty(found);
        Assert.All(found, p => Assert.InRange(p.Calls, 8, texts.Where(t => (' ' + t.Text + ' ').Contains(' ' + p.Words + ' ', StringComparison.Ordinal)).Sum(t => t.Times)));
    }

    private static IReadOnlyList<OwnPhrase> Find(params (string Text, long Times)[] texts) =>
        OwnPhrases.Find(texts, texts.Sum(t => t.Times), Function.Contains, Negations.For(["en"]));
}
