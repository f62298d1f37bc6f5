using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>
/// A third set of typings, read from third-forms.txt. They were written down before their author had read the rules. Every
/// second form is held out: how many of those leak is counted, which ones is never looked at. In a form, # is any digit, % any
/// capital, {F} a made-up family name, {G} a given name, {W} a name that is a word too, {n:xx} a full name of a language; what
/// stands in [] and in &lt;&gt; is a word and a short code that must not be found.
/// </summary>
internal sealed partial class ThirdPlantMaker(int seed, string file = "third-forms.txt")
{
    private static readonly string[] Starts = ["Abb", "Cald", "Drennw", "Elphr", "Froml", "Ghess", "Inchw", "Jarv", "Kirsm", "Lomb", "Murr", "Nantw", "Ogl", "Prest", "Quill", "Rothm", "Stav", "Tarn", "Ulv", "Whinf"];
    private static readonly string[] Middles = ["ack", "eld", "ibr", "oss", "umm", "arin", "ewer", "ollo"];
    private static readonly string[] Ends = ["an", "bourne", "ette", "insky", "owa", "icz", "elli", "ersen", "oğlu", "enko", "accio", "horst"];

    private static readonly string[] Given =
    [
        "Aoife", "Blerta", "Casimir", "Désirée", "Eszter", "Fiorenza", "Gudrun", "Halvard", "Ignatius", "Jadwiga", "Kerensa", "Ljubica", "Milagros", "Noor", "Oleksandr", "Philippa", "Quirijn", "Rosalba", "Saoirse",
        "Thibault", "Ulrike", "Valdemar", "Wojciech", "Xiomara", "Yusuf", "Zuzanna",
    ];

    // Names that are words of the language too.
    private static readonly Dictionary<string, string[]> WordNames = new(StringComparer.Ordinal)
    {
        ["en"] = ["Bishop", "Shepherd", "Summers", "Frank", "Penny", "Grant", "Ivy", "Reed", "Banks", "Brooks", "Rivers", "Rose", "Dean", "Chase", "Cook", "Spencer", "Parker", "Hazel", "Olive", "Pearl", "Ruby", "Jasmine", "Heather", "Marsh", "Wolf", "Swan", "Piper", "Sawyer"],
        ["de"] = ["Bauer", "Koch", "Wolf", "Jung", "Kurz", "Braun", "Fuchs", "Stern", "Sommer", "Herbst", "Kaufmann", "Jäger", "Hahn", "Schäfer"],
        ["fr"] = ["Petit", "Blanc", "Fontaine", "Pierre", "Rose", "Meunier", "Lebrun", "Tissier", "Moulin", "Lagrange", "Olive", "Chevalier", "Mercier", "Duchesne"],
        ["es"] = ["Campos", "Rubio", "Flores", "Torres", "Rosa", "Delgado", "Cruz", "Reyes", "Cordero", "Leal", "Paloma", "Soledad", "Prieto", "Molina"],
        ["nl"] = ["Smit", "Jager", "Vos", "Dekker", "Groen", "Prins", "Brouwer", "Kok", "Koster", "Schipper", "Bos", "Molenaar", "Timmerman", "Roos"],
        ["it"] = ["Ferraro", "Bianchi", "Rossi", "Greco", "Costa", "Fontana", "Monti", "Serena", "Rosa", "Leone", "Bruno", "Grassi", "Villa", "Mancini"],
        ["pl"] = ["Zając", "Wrona", "Kozioł", "Kot", "Lis", "Wróbel", "Róża", "Szpak", "Sikora", "Krawczyk", "Kaczor", "Mróz", "Gołąb", "Sokół"],
    };

    private static readonly Dictionary<string, string[]> FullNames = new(StringComparer.Ordinal)
    {
        ["ru"] = ["Аркадий Верещагин", "Людмила Заболоцкая", "Тимофей Кравчук", "Ксения Полозова"],
        ["uk"] = ["Оксана Шевчук", "Богдан Кириленко", "Ярослава Гнатюк", "Остап Левицький"],
        ["el"] = ["Αλέξανδρος Παππάς", "Δέσποινα Λάμπρου", "Σταύρος Μανιάτης", "Ευανθία Ζερβού"],
        ["ar"] = ["خالد المنصوري", "زينب الحداد", "ياسين بوعزيز", "سميرة القاسمي"],
        ["he"] = ["אברהם לוינסון", "רבקה שטרנברג", "יהונתן מזרחי", "מרים אוחיון"],
        ["fa"] = ["پرویز شیرازی", "گلناز کرمانی", "بهرام یزدانی", "ژاله تبریزی"],
        ["hi"] = ["सुरेश अग्रवाल", "लक्ष्मी त्रिपाठी", "विक्रम चौहान", "अनुराधा मिश्रा"],
        ["ta"] = ["முருகன் செல்வம்", "கலைவாணி ரங்கன்", "அருண்குமார் வேலன்", "தமிழ்செல்வி ராஜன்"],
        ["th"] = ["ปรีชาวงศ์สุวรรณ", "มาลีรัตน์ศรีสุข", "ธนวัฒน์แก้วมณี", "นภาพรทองดี"],
        ["zh"] = ["欧阳文静雅", "司马建国华", "诸葛明亮辉", "上官婉儿玉"],
        ["ja"] = ["佐々木健太郎", "長谷川美智子", "やまぐちさくら", "ナカムラケンジ"],
        ["ko"] = ["남궁서윤하늘", "황보지훈우진", "선우은주미래", "독고영재한솔"],
        ["ka"] = ["ნინო ბერიძე", "გიორგი ლომიძე", "ქეთევან მაისურაძე", "ზურაბ კვარაცხელია"],
        ["vi"] = ["Trần Thị Phượng", "Đặng Quốc Khánh", "Huỳnh Ngọc Bích", "Vương Đình Thắng"],
        ["tr"] = ["Gülşen Yıldırım", "Ertuğrul Çalışkan", "Nurcan Özdoğan", "Tarık Büyükşahin"],
        ["pt"] = ["Conceição Guimarães", "Leandro Magalhães", "Zulmira Gonçalves", "Adérito Falcão"],
        ["cs"] = ["Bohuslav Dvořáček", "Květoslava Říhová", "Vojtěch Hruška", "Drahomíra Ježková"],
        ["hu"] = ["Szabolcs Kövesdi", "Piroska Gyöngyösi", "Zsigmond Halász", "Ibolya Szűcs"],
        ["sv"] = ["Gunilla Åkerblom", "Torbjörn Öhrling", "Ingegerd Ljungström", "Sixten Hägglund"],
        ["ro"] = ["Țuțuianu Mihăiță", "Ștefania Brătescu", "Gheorghiță Crăciun", "Smărăndița Pârvu"],
    };

    private readonly Random _chance = new(seed);
    private readonly Dictionary<string, int> _next = new(StringComparer.Ordinal);
    private readonly HashSet<string> _families = new(StringComparer.Ordinal);
    private readonly ILookup<string, (string Form, bool HeldOut)> _forms = Read(file);

    /// <summary>The next plant for a cell of free text, or for one of codes and short words.</summary>
    /// <param name="language">The file's language.</param>
    /// <param name="isText">True for free text.</param>
    public Plant Next(string language, bool isText)
    {
        // Half of the texts are notes in the file's language; the other half may stand anywhere.
        string section = !isText ? "cell any" : Turn("text " + language) % 2 == 0 ? "text " + language : "text any";
        var forms = (IReadOnlyList<(string Form, bool HeldOut)>)[.. _forms[section]];
        (string form, bool heldOut) = forms[Turn(section + " form") % forms.Count];
        var words = new List<string>();
        string marked = Literal().Replace(Token().Replace(form, m => Render(m.Value, language, words)), m => Add(m.Groups[1].Value, words));
        string[] codes = [.. Code().Matches(marked).Select(m => m.Groups[1].Value)];
        string typed = Code().Replace(marked, "$1");
        string digits = string.Concat(typed.Select(c => PartsSignal.Pipeline.Words.TextFold.Digit(c)).Where(d => d >= 0));
        return new Plant(form, typed, words, digits, null, heldOut) { Codes = codes };
    }

    private string Render(string token, string language, List<string> words) => token switch
    {
        "#" => _chance.Next(10).ToString(CultureInfo.InvariantCulture),
        "%" or "{A}" => ((char)('A' + _chance.Next(26))).ToString(),
        "{F}" => Add(Family(), words),
        "{f}" => Add(Family().ToLowerInvariant(), words),
        "{FF}" => Add(Family().ToUpperInvariant(), words),
        "{G}" => Add(Given[Turn("given") % Given.Length], words),
        "{W}" => Add(WordName(language), words),
        "{w}" => Add(WordName(language).ToLowerInvariant(), words),
        "{WW}" => Add(WordName(language).ToUpperInvariant(), words),
        _ when token.StartsWith("{card:", StringComparison.Ordinal) => Card(token[6..^1]),
        _ => FullName(token[3..^1], words),
    };

    private string FullName(string language, List<string> words)
    {
        string name = FullNames[language][Turn(language) % FullNames[language].Length];
        words.AddRange(name.Split(' '));
        return name;
    }

    private string WordName(string language) => WordNames[language][Turn("word " + language) % WordNames[language].Length];

    private string Card(string between)
    {
        int[] digits = [4, 5, .. Enumerable.Range(0, 13).Select(_ => _chance.Next(10))];
        int sum = digits.Select((d, i) => i % 2 == 0 ? (d * 2 > 9 ? (d * 2) - 9 : d * 2) : d).Sum();
        return string.Join(between, (string.Concat(digits) + ((10 - (sum % 10)) % 10)).Chunk(4).Select(c => new string(c)));
    }

    // No name twice, so that a leak tells its form.
    private string Family()
    {
        string family;
        do
        {
            family = Starts[_chance.Next(Starts.Length)] + Middles[_chance.Next(Middles.Length)] + Ends[_chance.Next(Ends.Length)];
        }
        while (!_families.Add(family));
        return family;
    }

    private int Turn(string key) => _next[key] = _next.GetValueOrDefault(key, -1) + 1;

    private static string Add(string word, List<string> words)
    {
        words.Add(word);
        return word;
    }

    private static ILookup<string, (string Form, bool HeldOut)> Read(string name)
    {
        string file = Path.Combine(RepositoryFolder.Root, "tests", "EndToEnd.Tests", "Privacy", "Plants", name);
        var forms = new List<(string Section, string Form, bool HeldOut)>();
        string section = "";
        bool heldOut = false;
        foreach (string line in File.ReadAllLines(file, Encoding.UTF8))
        {
            if (Section().Match(line) is { Success: true } header)
            {
                (section, heldOut) = (header.Groups[1].Value, false);
                continue;
            }

            forms.Add((section, line, heldOut));
            heldOut = !heldOut;
        }

        return forms.ToLookup(f => f.Section, f => (f.Form, f.HeldOut));
    }

    [GeneratedRegex(@"^\[((?:text|cell) \w+)\]$")]
    private static partial Regex Section();

    [GeneratedRegex(@"#|%|\{[^}]+\}")]
    private static partial Regex Token();

    [GeneratedRegex("<([^>]+)>")]
    private static partial Regex Code();

    [GeneratedRegex(@"\[([^\]]+)\]")]
    private static partial Regex Literal();
}
