using CsCheck;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class TextScrubberTests
{
    [Theory]
    [InlineData("leaks, call 07700 900285 after 5", "leaks, call [phone] after 5")]
    [InlineData("ring 01144960259", "ring [phone]")]
    [InlineData("+44 20 7946 0109 please", "[phone] please")]
    [InlineData("tel (555) 010-0142", "tel [phone]")]
    [InlineData("mail a.b+c@example.co.uk now", "mail [e-mail] now")]
    [InlineData("card 4111 1111 1111 1111 ok", "card [card] ok")]
    [InlineData("lives at 73 Orchard Close, back door", "lives at [address], back door")]
    [InlineData("9 Shepherd's Way", "[address]")]
    [InlineData("Musterstraße 12 hinten", "[address] hinten")]
    [InlineData("ask for Mrs Kettleby", "ask for [name]")]
    [InlineData("call Ines first", "call [name] first")]
    public void Scrub_PersonalData_LeavesAMark(string text, string scrubbed) => Assert.Equal(scrubbed, TextScrubber.Scrub(text));

    [Theory]
    [InlineData("error E20, stops at 12 min")]
    [InlineData("part 40-118 fitted on 2026-08-03")]
    [InlineData("since 03/08/2026, 1400 rpm")]
    [InlineData("model WX4150-B, 3 hours in")]
    [InlineData("call before coming")]
    [InlineData("water on the floor")]
    public void Scrub_NothingPersonal_TheSameText(string text) => Assert.Equal(text, TextScrubber.Scrub(text));

    [Fact]
    public void RemoveName_NameOfTheRow_WholeWordsOnly() =>
        Assert.Equal("[name] says the door of the Annex hums; [name] will pay", TextScrubber.RemoveName("ANN says the door of the Annex hums; Hartlebrook will pay", "Mrs Ann Hartlebrook"));

    [Fact]
    public void Scrub_LongTextOfHalfAddresses_TheSameText()
    {
        string text = string.Concat(Enumerable.Repeat("1 a-b' 12 ", 2_000));
        Assert.Equal(text, TextScrubber.Scrub(text));
    }

    [Theory]
    [InlineData("hums when Kettleby fills it", "Mrs Ines Kettleby", "", "", "")]
    [InlineData("INES says it leaks", "Mrs Ines Kettleby", "", "", "")]
    [InlineData("number 0117 496 0463 again", "", "0117 496 0463", "", "")]
    [InlineData("at 12 mill road", "", "", "12 Mill Road, Townley", "")]
    [InlineData("leaking at rose cottage 4", "", "", "Rose Cottage 4\t, Townley", "")]
    [InlineData("leak at ,12 mill rd", "", "", " ,12 Mill Rd", "")]
    [InlineData("write to ines@example.com", "", "", "", "Ines@example.com")]
    [InlineData("b\u00fcgel klemmt", "B\u00dcGEL", "", "", "")]
    public void MayName_TextThatNamesTheCustomer_True(string text, string name, string phone, string address, string email) =>
        Assert.True(TextScrubber.MayName(LetterPairs.Create(text), name, phone, address, email));

    [Fact]
    public void MayName_PlainComplaint_False() =>
        Assert.False(TextScrubber.MayName(LetterPairs.Create("does not fill"), "Mr Gudrun Kettleby", "0117 496 0463", "12 Mill Road, Townley", "ines@example.com"));

    // Whatever the filter lets through, it never hides a text from those who look for the customer in it.
    [Fact]
    public void MayName_TextBuiltAroundACell_TrueWhereverSomethingIsTakenOut()
    {
        int taken = 0;
        Gen.Select(Some, Some, Cell, Blank, Gen.Int[0, 3], Gen.Bool).Sample((before, after, cell, blank, which, loud) =>
        {
            string[] cells = ["", "", "", ""];
            cells[which] = which == 2 ? cell + blank + ",Townley" : blank + cell + blank;
            string said = which == 2 && before.Length % 2 == 0 ? cells[which] : cell;
            string text = before + (loud ? said.ToUpperInvariant() : said) + after;
            bool changed = TextScrubber.RemoveName(text, cells[0]) != text
                || TextScrubber.Remove(text, cells[1], "[phone]") != text
                || TextScrubber.RemoveAddress(text, cells[2]) != text
                || TextScrubber.Remove(text, cells[3], "[e-mail]") != text;
            Assert.True(!changed || TextScrubber.MayName(LetterPairs.Create(text), cells[0], cells[1], cells[2], cells[3]));
            Interlocked.Add(ref taken, changed ? 1 : 0);
        }, iter: 5_000);
        Assert.True(taken > 1_000);
    }

    private static Gen<string> Some { get; } = Gen.String[Gen.OneOf(Gen.Char["abAB12 ,."], Gen.Char["sSkK\u017f\u212a\u00e9"]), 0, 14];

    private static Gen<string> Cell { get; } = Gen.String[Gen.OneOf(Gen.Char["mnop34 "], Gen.Char["sSkK\u017f\u212a\u00e9"]), 1, 14];

    private static Gen<string> Blank { get; } = Gen.Int[0, 3].Select(i => new[] { "", " ", "\t", "\n" }[i]);
}
