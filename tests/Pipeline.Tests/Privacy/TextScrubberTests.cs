using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Privacy;

public sealed class TextScrubberTests
{
    private static readonly ComplaintWordTable Complaints = WordSets.Load(null).Complaints;

    [Theory]
    [InlineData("ring back on 01632 960 259 after 5", "ring back on [phone] after 5")]
    [InlineData("ring 01144960259", "ring [phone]")]
    [InlineData("+44 20 7946 0109 please", "[phone] please")]
    [InlineData("tel (555) 010-0142", "tel [phone]")]
    [InlineData("tel 01632\u2013960\u2013259", "tel [phone]")]
    [InlineData("tel \uff10\uff11\uff16\uff13\uff12 \uff19\uff16\uff10 \uff12\uff15\uff19", "tel [phone]")]
    [InlineData("tel o1632 96o 259", "tel [phone]")]
    [InlineData("zero one six three two nine", "[phone]")]
    [InlineData("account 123456", "account [number]")]
    [InlineData("bike lock 4-4-6-7 by the drain", "bike lock [number] by the drain")]
    [InlineData("password L76kG22 for the app", "password [number] for the app")]
    [InlineData("pump hums 0151;2345;6756", "pump hums [phone]")]
    [InlineData("born on the 24th of March 41, leaks", "born on the [number] of March [number], leaks")]
    [InlineData("door at trumpet.ladle.meadow leaks", "door at [address] leaks")]
    [InlineData("Joy & Basil want it to drain", "[name] want it to drain")]
    [InlineData("TEL40/14020 please", "TEL[phone] please")]
    [InlineData("SE01/632960259", "SE[phone]")]
    [InlineData("mail a.b+c@example.co.uk now", "mail [e-mail] now")]
    [InlineData("rose.baker (at) mail.com", "[e-mail]")]
    [InlineData("baker AT mail DOT com", "[e-mail]")]
    [InlineData("card 4111 1111 1111 1111 ok", "card [card] ok")]
    [InlineData("card 4111\u00a01111\u00a01111\u00a01111 ok", "card [card] ok")]
    [InlineData("lives at 73 Orchard Close, back door", "lives at [address], back door")]
    [InlineData("lives at 31 Linden Avenue, back door", "lives at [address], back door")]
    [InlineData("9 Shepherd's Way", "[address]")]
    [InlineData("Xaverstr. 13", "[address]")]
    [InlineData("12 rue de la Paix", "[address]")]
    [InlineData("via Roma 5", "[address]")]
    [InlineData("ask for Mrs Kettleby", "ask for [name]")]
    [InlineData("ask for Baker", "ask for [name]")]
    [InlineData("call Ines first", "call [name] first")]
    [InlineData("call baker first", "call [name] first")]
    [InlineData("Rose says it leaks", "[name] says it leaks")]
    [InlineData("hums when Kettleby fills it", "hums when [...] fills it")]
    [InlineData("K e t t l e b y hums", "[...] hums")]
    [InlineData("Brunhilde's drum", "[...] drum")]
    [InlineData("Bru\u00adnhilde hums", "[...] hums")]
    [InlineData("Cooper (tenant) heard it", "[name] (tenant) heard it")]
    [InlineData("c/o Hunter", "c/o [name]")]
    [InlineData("ring for Baker", "ring for [name]")]
    [InlineData("key safe 7295", "key safe [number]")]
    [InlineData("door code is 7295", "door code is [number]")]
    [InlineData("hunter -at- mail -dot- com", "[e-mail]")]
    [InlineData("write to wa.me/442015550853", "write to [e-mail]")]
    [InlineData("card ending 6023", "card ending [number]")]
    [InlineData("buzzer 4B second door", "buzzer [number] second door")]
    [InlineData("license plate 7295 KLM by the drain", "license plate [number] by the drain")]
    [InlineData("o77oo 9oo461 hums", "[phone] hums")]
    [InlineData("baker (the son) heard it", "[name] (the son) heard it")]
    [InlineData("D. Shepherd heard it", "[name] heard it")]
    [InlineData("leaks again, back on Monday, told Boom upstairs", "leaks again, back on Monday, told [name] upstairs")]
    public void Scrub_PersonalData_LeavesAMark(string text, string scrubbed) => Assert.Equal(scrubbed, Scrub(text, "en"));

    [Theory]
    [InlineData("error E20, stops at 12 min")]
    [InlineData("part 40-118 fitted on 2026-08-03")]
    [InlineData("since 03/08/2026, 1400 rpm")]
    [InlineData("model WX4150-B, 3 hours in")]
    [InlineData("valve SE40/14020 leaks")]
    [InlineData("noisy.leaking.hot again")]
    [InlineData("codes E20;E21, stops at 1-2 min")]
    [InlineData("call before coming")]
    [InlineData("water on the floor")]
    [InlineData("dosnt fill, wont spin")]
    [InlineData("it bakes, the baker is away")]
    [InlineData("customer says no heat")]
    [InlineData("Door Stuck And Drum Noisy")]
    [InlineData("error code 7295")]
    [InlineData("aluminium tray, odd colour")]
    [InlineData("washer (customer away)")]
    [InlineData("buzzer E20 sounds 4 times")]
    [InlineData("Tenant: Washer leaks")]
    [InlineData("too hot, 4 oz of water")]
    [InlineData("filter soaked with oil")]
    [InlineData("same again, Blowing cold air")]
    [InlineData("recover lower edge plate (CC1500)")]
    [InlineData("used every year at Christmas")]
    [InlineData("hums. D. Drain stuck")]
    public void Scrub_NothingPersonal_TheSameText(string text) => Assert.Equal(text, Scrub(text, "en"));

    [Theory]
    [InlineData("de", "L\u00e4uft aus, Wasser unter der T\u00fcr")]
    [InlineData("de", "laeuft nicht, Tuer klemmt")]
    [InlineData("de", "Kunde Termin verschoben, Mieter Waschmaschine steht")]
    [InlineData("de", "Die Verwaltung hat angerufen, Anzeige hat Fehler gemeldet")]
    [InlineData("fr", "fuite d'eau sous la porte")]
    [InlineData("es", "no calienta el agua")]
    [InlineData("nl", "lekt onder de deur")]
    [InlineData("nl", "hopelijk is dit gemakkelijk te lijmen, de t\u0133d loopt niet")]
    [InlineData("it", "perde acqua dalla porta, non scarica l'acqua")]
    [InlineData("pl", "nie grzeje wody, g\u0142o\u015bno wiruje")]
    public void Scrub_ComplaintOfTheLanguage_TheSameText(string language, string text) => Assert.Equal(text, Scrub(text, language));

    [Theory]
    [InlineData("de", "Frau B\u00e4cker anrufen, Bahnhofstra\u00dfe 12 hinten", "[name] anrufen, [address] hinten")]
    [InlineData("fr", "appeler Mme Boulanger", "appeler [name]")]
    [InlineData("es", "preguntar por Rosa", "preguntar por [name]")]
    [InlineData("es", "avisar a Rosa", "avisar a [name]")]
    [InlineData("it", "chiamare Pastore", "chiamare [name]")]
    [InlineData("fr", "rappeler Boulanger", "rappeler [name]")]
    [InlineData("de", "Ansprechpartner Richter", "Ansprechpartner [name]")]
    [InlineData("de", "Mieter: Lange", "Mieter: [name]")]
    [InlineData("de", "Mieterin Lerche h\u00f6rt nichts", "Mieterin [name] h\u00f6rt nichts")]
    [InlineData("de", "Tochter Heide ist ab 14 Uhr da", "Tochter [name] ist ab 14 Uhr da")]
    [InlineData("de", "Fuchs hat angerufen, Maschine steht im Keller", "[name] hat angerufen, Maschine steht im Keller")]
    [InlineData("de", "lt. Braun seit Montag", "[name] seit Montag")]
    [InlineData("es", "D. Cordero avisa", "[name] avisa")]
    [InlineData("nl", "start niet, afspraak met Brouwer", "start niet, afspraak met [name]")]
    [InlineData("pl", "ul. D\u0142uga 17, nie grzeje", "[address], nie grzeje")]
    public void Scrub_NameOrAddressOfTheLanguage_LeavesAMark(string language, string text, string scrubbed) => Assert.Equal(scrubbed, Scrub(text, language));

    // A shop of one country may put small words of another language into its texts.
    [Theory]
    [InlineData("de", "Abtauheizung und \u00d6lpumpe defekt, Ablaufschlauch lose")]
    [InlineData("de", "Stromkabel am Ersatzkeilriemen, Verl\u00e4ngerungskabel hei\u00df")]
    [InlineData("de", "Waschmaschinenmotor und Programmschalter kaputt, Bildschirm selber getauscht")]
    [InlineData("it", "l'alimentatore non si carica, app e bluetooth non vanno")]
    [InlineData("es", "el CD no se oye")]
    public void Scrub_CompoundOrCommonWord_TheSameText(string language, string text) => Assert.Equal(text, Scrub(text, language));

    [Theory]
    [InlineData("de", "Brunnhuber sagt es leckt", "[...] sagt es leckt")]
    [InlineData("de", "hat Steinwald repariert", "hat [...] repariert")]
    [InlineData("en", "the stromkabel hums", "the [...] hums")]
    public void Scrub_CompoundThatEndsInNoPartOfAMachine_LeavesAMark(string language, string text, string scrubbed) => Assert.Equal(scrubbed, Scrub(text, language));

    [Fact]
    public void Scrub_SmallWordsOfAnotherLanguage_Stay() => Assert.Equal("nur kalt, only now and then", Scrub("nur kalt, only now and then", "de"));

    [Fact]
    public void Scrub_CapitalOnAWordThatIsMostlyWrittenSmall_NoName()
    {
        ulong[] small = [WordList.Hash("boom")];
        Assert.Equal("reseal [name] lines", Scrub("reseal Boom lines", "en"));
        Assert.Equal("reseal Boom lines", TextScrubber.Scrub("reseal Boom lines", new FileWords(["en"], [], [], [], 5, Complaints, lowercase: small)));
        Assert.Equal("call [name]", TextScrubber.Scrub("call Boom", new FileWords(["en"], [], [], [], 5, Complaints, lowercase: small)));
    }

    [Fact]
    public void Scrub_WordThatEnoughCustomersUse_Stays()
    {
        var words = new FileWords(["en"], [WordList.Hash("frobnicator")], [], [], 5, Complaints);
        Assert.Equal("frobnicator hums", TextScrubber.Scrub("frobnicator hums", words));
        Assert.Equal("[...] hums", Scrub("frobnicator hums", "en"));
    }

    [Fact]
    public void Scrub_LongHostileText_EndsQuickly()
    {
        string text = string.Concat(Enumerable.Repeat("1 a-b' 12 (at) x. ", 1_000));
        Assert.NotNull(Scrub(text, "en"));
    }

    [Theory]
    [InlineData("Baker hums", "Mrs Ines Baker", "", "", "[name] hums")]
    [InlineData("the barker hums", "Mr Barker", "", "", "the [name] hums")]
    [InlineData("the bakers hum", "Mr Baker", "", "", "the [name] hum")]
    [InlineData("the backer hums", "Mr Baker", "", "", "the [name] hums")]
    [InlineData("JU\u0308RGEN hums", "J\u00fcrgen K", "", "", "[name] hums")]
    [InlineData("rose mary hums", "Rosemary Hill", "", "", "[name] hums")]
    [InlineData("leaking at rose cottage", "", "Rose Cottage, Townley", "", "leaking at [address]")]
    [InlineData("the miller hums", "", "", "miller@example.com", "the [name] hums")]
    [InlineData("does not heat", "Mr Heath", "", "", "does not heat")]
    [InlineData("water on the floor", "The Crown Inn", "12 Water Street", "", "water on the floor")]
    public void Remove_RowsOwnCustomer_LeavesAMark(string text, string name, string address, string email, string expected)
    {
        var cells = new CustomerCells();
        var tokens = new TextTokens(text);
        cells.SetNames(name, email);
        cells.SetAddress(address, tokens);
        Assert.Equal(expected, cells.Remove(tokens));
    }

    private static string Scrub(string text, string language) => TextScrubber.Scrub(text, FileWords.Of(Complaints, language));
}
