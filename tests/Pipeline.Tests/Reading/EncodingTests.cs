using System.Text;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Tests.Reading;

public sealed class EncodingTests
{
    private const string Russian = "Дата;Мастер;Жалоба;Деталь\n12.03.2024;Иванов;не сливает воду;насос\n13.03.2024;Петров;не греет, шумит при отжиме;ТЭН\n14.03.2024;Ёлкин;течёт снизу;манжета люка\n";
    private const string Chinese = "日期,师傅,故障,配件\n2024-03-12,张伟,不排水,排水泵\n2024-03-13,李娜,不加热 E3,加热管\n2024-03-14,王芳,漏水 LT-100,门封圈\n";
    private const string German = "Datum;Monteur;Meldung;Teil\n12.03.2024;Müller;läuft aus, Tür öffnet nicht;Türdichtung\n13.03.2024;Käthe Groß;heizt nicht, Geräusch beim Schleudern;Heizstab für Spüler\n14.03.2024;Jürgen;Spülmaschine zieht kein Wasser, Überlauf;Ventil\n";
    private const string French = "Date;Technicien;Problème;Pièce\n12/03/2024;Hélène;n'évacue pas, odeur de brûlé;pompe de vidange\n13/03/2024;Gaël;ne chauffe plus, créée à l'été;résistance\n";

    static EncodingTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    [Theory]
    [InlineData("windows-1251", Russian)]
    [InlineData("gb18030", Chinese)]
    [InlineData("windows-1252", German)]
    [InlineData("windows-1252", French)]
    public void Detect_OldEncodings_AreToldApart(string name, string text)
    {
        byte[] bytes = Encoding.GetEncoding(name).GetBytes(text);
        var scan = ContentScan.Read(new MemoryStream(bytes), TestContext.Current.CancellationToken);
        Assert.Equal(text, TextEncodings.Detect(scan).GetString(bytes));
    }

    [Theory]
    [InlineData("windows-1251", Russian)]
    [InlineData("gb18030", Chinese)]
    public void Detect_WordsAmongMuchAscii_AreFound(string name, string text)
    {
        byte[] bytes = [.. Enumerable.Range(0, 40).SelectMany(i => Encoding.GetEncoding(name).GetBytes($"J-{i},2024-03-{1 + (i % 28)},LT {i},{text.Split('\n')[1 + (i % 3)]}\n"))];
        var scan = ContentScan.Read(new MemoryStream(bytes), TestContext.Current.CancellationToken);
        Assert.Equal(name, TextEncodings.Detect(scan).WebName);
    }

    [Theory]
    [InlineData("nr-artykułu;ilość\n1661346;1\n")]
    [InlineData("Kod części;Cena\n1661346;1\n")]
    [InlineData("urządzenie;rozwiązanie\npralka;naprawiono\n")]
    public void Detect_FewPolishLetters_AreCentralEuropean(string text)
    {
        byte[] bytes = Encoding.GetEncoding(1250).GetBytes(text);
        Assert.Equal("windows-1250", TextEncodings.Detect(ContentScan.Read(new MemoryStream(bytes), TestContext.Current.CancellationToken)).WebName);
    }

    [Theory]
    [InlineData("flow 12 m³h;a¹ b³\n")]
    [InlineData("pièce;nœud, cœur, fœtus, œdème, manœuvre, phœnix\n")]
    [InlineData("café;1\n")]
    [InlineData("Größe;Öl\nTür zu;ÄÖÜ\n")]
    public void Detect_FewLetters_AreWesternEuropean(string text)
    {
        byte[] bytes = Encoding.GetEncoding(1252).GetBytes(text);
        Assert.Equal("windows-1252", TextEncodings.Detect(ContentScan.Read(new MemoryStream(bytes), TestContext.Current.CancellationToken)).WebName);
    }

    [Theory]
    [InlineData("£")]
    [InlineData("€")]
    public void Detect_SignsOfACurrencyAlone_AreWesternEuropean(string sign)
    {
        string text = "Sell,Cost\n" + string.Concat(Enumerable.Range(1, 300).Select(i => $"{sign}{17 + (i * 7 % 90)}.{i % 10}0,{sign}{9 + (i * 3 % 50)}.5{i % 10}\n"));
        byte[] bytes = Encoding.GetEncoding(1252).GetBytes(text);
        Assert.Equal("windows-1252", TextEncodings.Detect(ContentScan.Read(new MemoryStream(bytes), TestContext.Current.CancellationToken)).WebName);
    }
}
