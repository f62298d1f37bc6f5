using System.Globalization;
using System.Text;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Words a header for each concept in the office's language and style; a concept keeps its word in all of a shop's tables.</summary>
internal sealed class HeaderNames(Dialect dialect, Dice dice)
{
    private static readonly Dictionary<string, string> Folded = Pairs(
        "ä=ae ö=oe ü=ue ß=ss Ä=Ae Ö=Oe Ü=Ue é=e è=e ê=e à=a â=a á=a ç=c í=i ó=o ú=u ñ=n ù=u ò=o ë=e ï=i ł=l ą=a ę=e ś=s ć=c ż=z ź=z ń=n °=o º=o É=E");

    private static readonly Dictionary<string, string> Short = Pairs(
        "number=no date=dt quantity=qty customer=cust description=descr reference=ref account=acct purchase=purch technician=tech manufacturer=mfr nummer=nr "
        + "datum=dat menge=mg bezeichnung=bez numéro=no référence=réf número=núm cantidad=cant aantal=aant numer=nr quantità=q.tà");

    private readonly Dictionary<string, string> _chosen = new(StringComparer.Ordinal);

    /// <summary>The tables' columns with their headers; no header stands twice in one table.</summary>
    public TableDraft Name(TableDraft table)
    {
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var named = new List<ColumnDraft>();
        var inTable = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (ColumnDraft column in table.Columns)
        {
            string header = column.Fixed ?? (column.Group > 0 ? Grouped(column, inTable) : Styled(Word(column.Concept), column.Concept));
            foreach (string other in column.Fixed is null && column.Group == 0 ? DialectWords.HeadersFor(column.Concept, dialect.Language) : [])
            {
                if (!taken.Contains(header))
                {
                    break;
                }

                header = Styled(other, column.Concept);
            }

            for (int n = 2; !taken.Add(header); n++)
            {
                header = $"{header} {n.ToString(CultureInfo.InvariantCulture)}";
            }

            named.Add(column with { Header = header });
        }

        return table with { Columns = named };
    }

    /// <summary>Any text in the style of the headers.</summary>
    public string Styled(string words, string concept = "")
    {
        if (dialect.AsciiOnly)
        {
            words = Folded.Aggregate(words, (text, pair) => text.Replace(pair.Key, pair.Value, StringComparison.Ordinal));
        }

        string[] parts = words.Split([' ', '-', '/', '\''], StringSplitOptions.RemoveEmptyEntries);
        string styled = dialect.Style switch
        {
            HeaderStyle.Capital => Capital(words),
            HeaderStyle.Title => string.Join(' ', words.Split(' ').Select(Capital)),
            HeaderStyle.Upper => words.ToUpperInvariant(),
            HeaderStyle.Lower => words.ToLowerInvariant(),
            HeaderStyle.Camel => string.Concat(parts.Select((p, i) => i == 0 ? p.ToLowerInvariant() : Capital(p))),
            HeaderStyle.Pascal => string.Concat(parts.Select(Capital)),
            HeaderStyle.Snake => string.Join('_', parts).ToLowerInvariant(),
            HeaderStyle.UpperSnake => string.Join('_', parts).ToUpperInvariant(),
            HeaderStyle.Kebab => string.Join('-', parts).ToLowerInvariant(),
            HeaderStyle.Prefixed => dialect.Prefix + string.Join('_', parts).ToLowerInvariant(),
            HeaderStyle.Brackets => $"[{words}]",
            HeaderStyle.Compact => string.Concat(parts).ToLowerInvariant(),
            HeaderStyle.Abbreviated => string.Join(' ', parts.Select(Shorten)),
            HeaderStyle.AbbreviatedUpper => string.Join('_', parts.Select(Shorten)).ToUpperInvariant(),
            HeaderStyle.Colon => Capital(words) + ":",
            HeaderStyle.Numbered => $"{((words.Length * 7 % 40) + 10).ToString(CultureInfo.InvariantCulture)} {words}",
            _ => words,
        };
        return styled + Unit(concept);
    }

    private static Dictionary<string, string> Pairs(string text) => text.Split(' ').Select(p => p.Split('=')).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);

    private static string Capital(string text) => text.Length == 0 ? text : text[..1].ToUpperInvariant() + text[1..];

    private static string Shorten(string word)
    {
        if (Short.TryGetValue(word.ToLowerInvariant(), out string? known))
        {
            return known;
        }

        if (word.Length <= 5)
        {
            return word;
        }

        var text = new StringBuilder().Append(word[0]);
        foreach (char c in word.AsSpan(1))
        {
            if (text.Length < 5 && !"aeiouäöüéèáíóúąę".Contains(char.ToLowerInvariant(c), StringComparison.Ordinal))
            {
                text.Append(c);
            }
        }

        return text.ToString();
    }

    private string Word(string concept)
    {
        if (!_chosen.TryGetValue(concept, out string? word))
        {
            string[] words = DialectWords.HeadersFor(concept, dialect.Language);
            word = dice.Pick(words);
            _chosen[concept] = word;
        }

        return word;
    }

    private string Grouped(ColumnDraft column, Dictionary<string, string> inTable)
    {
        if (!inTable.TryGetValue(column.Concept, out string? word))
        {
            // two concepts of one group never share a word, or their numbered headers would be the same
            word = DialectWords.HeadersFor(column.Concept, dialect.Language).Prepend(Word(column.Concept)).First(w => !inTable.ContainsValue(w));
            inTable[column.Concept] = word;
        }

        return Styled(word, column.Concept) + string.Format(CultureInfo.InvariantCulture, dialect.GroupMark, column.Group);
    }

    private string Unit(string concept)
    {
        if (!dialect.UnitsInHeaders)
        {
            return "";
        }

        string currency = dialect.Currency.Length > 0 ? dialect.Currency : "EUR";
        string? unit = concept switch
        {
            "labour" => "min",
            "price" or "unit_cost" or "vat" or "line_total" => currency,
            "weight" => "kg",
            "km" => "km",
            _ => null,
        };
        return unit is null ? "" : dialect.Style is HeaderStyle.Snake or HeaderStyle.UpperSnake or HeaderStyle.Prefixed ? "_" + unit : $" ({unit})";
    }
}
