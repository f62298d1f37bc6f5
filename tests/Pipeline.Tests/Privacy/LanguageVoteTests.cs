using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class LanguageVoteTests
{
    [Theory]
    [InlineData("water does not drain out of the machine and the door is stuck, go to do it in the morning", "en")]
    [InlineData("die Maschine pumpt nicht ab und das Wasser ist noch in der Trommel", "de")]
    [InlineData("the pump is loud and the water is in the drum; die Pumpe ist laut und das Wasser ist in der Trommel", "en de")]
    [InlineData("pralka nie wiruje i cieknie woda", "pl")]
    [InlineData("", "en")]
    public void Languages_OfTexts_AreThoseWithWordsOfTheirOwn(string text, string expected) =>
        Assert.Equal(expected, string.Join(' ', Vote(text).Languages));

    // "to", "do" and "motor" are words of other languages as well.
    [Fact]
    public void Languages_WordsThatLanguagesShare_DoNotAddALanguage()
    {
        string english = string.Concat(Enumerable.Repeat("to do: see the motor, the noise is in the pump and the water is off ", 40));
        Assert.Equal(["en"], Vote(english).Languages);
    }

    private static LanguageVote Vote(string text)
    {
        var vote = new LanguageVote();
        foreach (string word in text.Split([' ', ',', ';', ':'], StringSplitOptions.RemoveEmptyEntries))
        {
            vote.Add(WordList.Hash(TextFold.Fold(word)));
        }

        return vote;
    }
}
