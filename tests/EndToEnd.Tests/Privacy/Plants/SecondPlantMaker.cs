using PhoneNumbers;

namespace PartsSignal.EndToEnd.Tests.Privacy.Plants;

/// <summary>
/// A second set of typings, written down after the rules were made and looked at once before any of them was changed. Forms
/// marked as held out were never looked at one by one: only how many of them leaked.
/// </summary>
internal sealed class SecondPlantMaker(int seed)
{
    private static readonly string[] Starts = ["Aldr", "Bexl", "Corv", "Dunth", "Eskr", "Fenw", "Gorl", "Hyth", "Ivarr", "Jorv", "Kasp", "Lorq", "Nevr", "Orlunk", "Pelv", "Rusk"];
    private static readonly string[] Middles = ["am", "ein", "ofr", "ut", "ivand", "arr", "oln", "est"];
    private static readonly string[] Ends = ["ley", "dottir", "wicz", "escu", "hoven", "vist", "oulos", "ishvili", "enko", "thwaite"];
    private static readonly string[] Regions = ["GB", "US", "DE", "FR", "ES", "IT", "NL", "PL", "SE", "JP", "IN", "BR"];

    private static readonly (string Form, string Given, bool HeldOut)[] Scripts =
    [
        ("Hebrew", "שושנה", false), ("Georgian", "თამარი", false), ("Thai", "สมชาย", false), ("Armenian", "Հայկանուշ", true), ("Bengali", "রবীন্দ্রনাথ", true), ("Amharic", "አስቴር", true),
    ];

    // What people write beside a name that is a word of the language too.
    private static readonly Dictionary<string, (string[] Words, string[] Beside, string[] HeldOut)> Cues = new(StringComparer.Ordinal)
    {
        ["en"] = (["Barber", "Cooper", "Potter", "Hunter", "Carter"], ["Mr & Mrs {0}", "c/o {0}", "the {0} family", "pls ring {0}", "{0} (tenant)"], ["tenant = {0}", "spk w/ {0}", "see {0} at reception"]),
        ["de"] = (["Schneider", "Vogel", "Kaiser", "Richter", "Zimmermann"], ["Fam. {0}", "bei {0} klingeln", "Hr. {0} anrufen", "für Frau {0}"], ["Eheleute {0}", "Rückruf {0}", "Ansprechpartner {0}"]),
        ["fr"] = (["Boulanger", "Berger", "Marchand", "Charpentier"], ["chez Mme {0}", "voir avec M. {0}", "rappeler {0}"], ["de la part de {0}", "gardien: {0}", "famille {0}"]),
        ["es"] = (["Herrero", "Pastor", "Moreno", "Guerrero"], ["Sra. {0}", "avisar a {0}", "la señora {0}"], ["doña {0}", "de parte de {0}", "familia {0}"]),
        ["nl"] = (["Bakker", "Visser", "Mulder", "Kuiper"], ["mevr. {0}", "familie {0}", "dhr {0} bellen"], ["graag {0} bellen", "t.a.v. {0}", "bij {0} aanbellen"]),
        ["it"] = (["Barbieri", "Gallo", "Pastore", "Marino"], ["sig.ra {0}", "il signor {0}", "chiamare {0}"], ["famiglia {0}", "c/o {0}", "citofonare {0}"]),
        ["pl"] = (["Krawiec", "Kowal", "Wilk", "Szewc"], ["pan {0}", "pani {0}", "dzwonić do {0}"], ["p. {0}", "rodzina {0}", "u pana {0}"]),
    };

    private static readonly (string Form, string Pattern, bool HeldOut)[] Addresses =
    [
        ("flat first", "Flat 3, 12 {0} Rd", false), ("number behind", "{0} Road, no. 12", false), ("comma behind the number", "12, {0} Street", false), ("Nr.", "{0}weg Nr. 12", false),
        ("house", "{0} Cottage, the High Street", false), ("Turkish", "{0} Sok. No:5", false), ("PO box", "P.O. Box 451, {0}", false), ("Russian", "ул. {0} д. 5", false), ("Brazil", "R. {0}, 210 ap 31", false),
        ("corner", "corner of {0} and 5th", true), ("in words", "number twelve {0} Crescent", true), ("block and unit", "Blk 45 {0} Lane #12-34", true), ("Greek", "Οδός {0} 14", true), ("Swedish box", "{0}vägen 8 lgh 1102", true),
    ];

    private static readonly (string Form, Func<Random, string> Make, bool HeldOut)[] Numbers =
    [
        ("account", r => $"DE89 3704 0044 0532 {Digits(r, 4)} 00", false), ("account glued", r => "GB29NWBK601613" + Digits(r, 8), false), ("social security", r => $"{Digits(r, 3)}-{Digits(r, 2)}-{Digits(r, 4)}", false),
        ("day of birth", r => $"born {r.Next(1, 29):00}.{r.Next(1, 13):00}.19{r.Next(40, 99)}", false), ("coordinates", r => $"53.{Digits(r, 4)}, -1.{Digits(r, 4)}", false),
        ("key safe", r => "key safe " + Digits(r, 4), false), ("postcode", r => $"QX{r.Next(1, 9)} {r.Next(1, 9)}ZV", false), ("ZIP", r => $"{Digits(r, 5)}-{Digits(r, 4)}", true), ("gate code", r => "gate code " + Digits(r, 4), true),
        ("plate", r => $"QV{r.Next(10, 99)} ZXR", true), ("card with month", r => $"card ending {Digits(r, 4)} exp 0{r.Next(1, 9)}/2{r.Next(6, 9)}", true), ("day of birth in words", r => $"DOB {r.Next(1, 29)} March 19{r.Next(40, 99)}", true),
    ];

    private readonly Random _chance = new(seed);
    private int _made;

    /// <summary>The next plant for a cell of free text, or for one of codes and short words.</summary>
    /// <param name="language">The file's language.</param>
    /// <param name="isText">True for free text.</param>
    public Plant Next(string language, bool isText)
    {
        int turn = _made++ % 10;
        return turn < 4 ? Name()
            : turn < 6 ? Phone()
            : turn == 6 ? Email()
            : turn == 7 ? Address()
            : isText && turn == 8 ? Number()
            : isText ? Cue(language)
            : Name();
    }

    private Plant Name()
    {
        string family = Family(), other = Family();
        (string script, string given, bool heldOut) = Scripts[_chance.Next(Scripts.Length)];
        return _chance.Next(22) switch
        {
            0 => Of("initial", $"{family[0]}. {family}", family),
            1 => Of("two family names", $"{family}-{other}", family, other),
            2 => Of("particle", $"van den {family}", family),
            3 => Of("O'", "O'" + family, "O" + family),
            4 => Of("in one word", $"Otis{family}", family),
            5 => Of("underscore", $"otis_{family.ToLowerInvariant()}", family),
            6 => Of("letter of another script", family.ToLowerInvariant().Replace('e', '\u0435').Replace('o', '\u043e'), family.Replace('e', '\u0435').Replace('o', '\u043e')),
            7 => Of("spelled out", string.Join(' ', family.ToUpperInvariant().ToCharArray())),
            8 => Of("handle", $"@{family.ToLowerInvariant()}84", family),
            9 => Of("name and year", $"{family}1961", family),
            10 => Of("glued behind a word", "leaking" + family, family),
            11 => Of("full width", string.Concat(family.Select(c => (char)(c + 0xfee0))), family),
            12 => Of("two slips", family[..2] + family[3..^2] + family[^1], family[..2] + family[3..^2] + family[^1]) with { Customer = "Mrs " + family },
            13 => Of("umlaut in two letters", $"Muelken{family}", "Muelken" + family) with { Customer = $"Mülken{family}" },
            14 => Of("cut by a hyphen", $"{family[..4]}-\n{family[4..]}", family[..4] + "-" + family[4..]) with { Customer = "Mr " + family },
            15 or 16 => Of(script, given, given) with { HeldOut = heldOut },
            17 => Of("dots between letters", string.Join('.', family.ToCharArray())) with { HeldOut = true },
            18 => Of("bold letters", string.Concat(family.ToLowerInvariant().Select(c => char.ConvertFromUtf32(0x1d41a + (c - 'a'))))) with { HeldOut = true },
            19 => Of("zero-width joiners", string.Join('\u200d', family.ToCharArray()), family) with { HeldOut = true },
            20 => Of("digits for letters", family.Replace('e', '3').Replace('o', '0').Replace('i', '1')) with { HeldOut = true },
            _ => Of("last name first", $"{family.ToUpperInvariant()},{other}", family, other) with { HeldOut = true },
        };
    }

    private Plant Cue(string language)
    {
        (string[] words, string[] beside, string[] heldOut) = Cues[language];
        int form = _chance.Next(beside.Length + heldOut.Length);
        string pattern = form < beside.Length ? beside[form] : heldOut[form - beside.Length];
        string word = words[_chance.Next(words.Length)];
        return Of($"{language} {pattern}", string.Format(null, pattern, word), word) with { HeldOut = form >= beside.Length };
    }

    private Plant Phone()
    {
        var phones = PhoneNumberUtil.GetInstance();
        string region = Regions[_chance.Next(Regions.Length)];
        PhoneNumber number = phones.GetExampleNumberForType(region, PhoneNumberType.MOBILE);
        number = new PhoneNumber.Builder().MergeFrom(number).SetNationalNumber((number.NationalNumber / 10_000 * 10_000) + (ulong)_chance.Next(10_000)).Build();
        string national = phones.Format(number, PhoneNumberFormat.NATIONAL), digits = phones.GetNationalSignificantNumber(number);
        string[] groups = national.Split([' ', '-', '(', ')', '/', '.'], StringSplitOptions.RemoveEmptyEntries);
        string plain = string.Concat(groups);
        int typing = _chance.Next(16);
        string typed = typing switch
        {
            0 => "tel" + plain,
            1 => $"{national} ext 22",
            2 => plain.Replace('1', 'l').Replace('0', 'O'),
            3 => string.Concat(plain.Select(c => (char)(c - '0' + '\u0660'))),
            4 => string.Concat(plain.Select(c => (char)(c - '0' + '\u0966'))),
            5 => string.Join(',', groups),
            6 => string.Join('\n', groups),
            7 => string.Join(' ', plain.Select(c => Spelled[c - '0'])),
            8 => "+44 (0)" + string.Join(' ', digits.Chunk(3).Select(c => new string(c))),
            9 => string.Join('x', groups.Length > 1 ? groups : plain.Chunk(4).Select(c => new string(c))),
            10 => string.Join(" - ", plain.Chunk(2).Select(c => new string(c))),
            11 => string.Concat(plain.Select(c => c + "\ufe0f\u20e3")),
            12 => string.Join('*', plain.Chunk(4).Select(c => new string(c))),
            13 => string.Join('\'', plain.Chunk(3).Select(c => new string(c))),
            14 => "wa.me/44" + digits,
            _ => string.Join('|', plain.Chunk(3).Select(c => new string(c))),
        };
        return new Plant($"phone {typing}", typed, [], typing is 2 or 7 ? "" : digits, null, typing >= 11);
    }

    private static readonly string[] Spelled = ["null", "one", "zwei", "trois", "four", "cinq", "six", "sieben", "eight", "nine"];

    private Plant Email()
    {
        string name = Family().ToLowerInvariant(), domain = Family().ToLowerInvariant();
        int typing = _chance.Next(8);
        string typed = typing switch
        {
            0 => $"{name}@{domain}",
            1 => $"{name}@ {domain} .com",
            2 => "carter at gmail dot com",
            3 => $"{name}(a){domain} punkt de",
            4 => $"mailto:{name}%40{domain}.com",
            5 => $"potter_{name} @ mail . com",
            6 => "hunter -at- mail -dot- com",
            _ => $"{name} a t {domain} d o t com",
        };
        return Of($"e-mail {typing}", typed, typing switch { 2 => ["carter"], 5 => ["potter", name], 6 => ["hunter"], _ => [name] }) with { HeldOut = typing >= 6 };
    }

    private Plant Address()
    {
        (string form, string pattern, bool heldOut) = Addresses[_chance.Next(Addresses.Length)];
        string street = Family();
        return Of("address " + form, string.Format(null, pattern, street), street) with { HeldOut = heldOut };
    }

    private Plant Number()
    {
        (string form, Func<Random, string> make, bool heldOut) = Numbers[_chance.Next(Numbers.Length)];
        string typed = make(_chance);
        return Of("number: " + form, typed) with { Digits = string.Concat(typed.Where(char.IsAsciiDigit)), HeldOut = heldOut };
    }

    private string Family() => Starts[_chance.Next(Starts.Length)] + Middles[_chance.Next(Middles.Length)] + Ends[_chance.Next(Ends.Length)];

    private static string Digits(Random chance, int count) => string.Concat(Enumerable.Range(0, count).Select(_ => chance.Next(10)));

    private static Plant Of(string form, string typed, params string[] words) => new(form, typed, words, "", null, false);
}
