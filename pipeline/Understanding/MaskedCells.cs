using System.Text.RegularExpressions;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Shows what a cell looks like without what it says.</summary>
internal static partial class MaskedCells
{
    private const double Possible = 0.03;
    private const double Likely = 0.5;
    private const double Named = 0.6;
    private const int Longest = 60;
    private const int Usual = 5;
    private const int FewCells = 50;
    private const int ShortNumber = 4;
    private static readonly Lazy<ComplaintWordTable> Complaints = new(() => WordSets.Load(null).Complaints);

    /// <summary>The cell with every letter an x and every digit a 0.</summary>
    public static string Mask(string cell) => string.Concat(cell.Take(40).Select(c => char.IsLetter(c) ? 'x' : char.IsDigit(c) ? '0' : c));

    /// <summary>The cell as an example: as typed where it is a code or many rows have it, else without what may be personal.</summary>
    public static string Show(ColumnSample column, string cell)
    {
        string shown = CodeScrubber.IsPlain(cell) || column.IsDates || IsUsual(column, cell) ? cell : Scrubbed(column.Texts, cell);
        return shown.Length > Longest ? shown[..Longest] + "\u2026" : shown;
    }

    /// <summary>A cell as an example in a question about its column.</summary>
    public static string Example(ColumnSample column, string cell, TableReading reading) => Shown(column, VanInitials(column, cell, reading), reading);

    /// <summary>The cell, with initials for the people that a van is named after, if the column may name vans.</summary>
    public static string VanInitials(ColumnSample column, string cell, TableReading reading)
    {
        int at = reading.Table.Sample.Columns.ToList().IndexOf(column);
        int van = reading.Choice is { } choice ? ((IList<string>)choice.Fields).IndexOf("van") : -1;
        bool mayBe = HeaderLexicon.Shipped.Match(column.Name)[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf("van")] >= Named
            || (at >= 0 && van >= 0 && FieldChoice.Chance(reading.Choice!.Odds[at, van]) >= Possible);
        return mayBe ? VanName.WithInitials(cell) : cell;
    }

    private static string Shown(ColumnSample column, string cell, TableReading reading) =>
        IsHarmless(column, cell) ? cell
        : IsNamedPersonal(column, reading) ? Mask(cell)
        : LooksPersonal(column, reading) ? Words(column, cell)
        : !MayHoldCustomers(reading) && !cell.Any(c => char.IsWhiteSpace(c) || c == '@') ? cell
        : Show(column, cell);

    /// <summary>A cell of a column that is not read: as typed, or its form where it may be personal.</summary>
    public static string ShowUnread(ColumnSample column, string cell)
    {
        string shown = Show(column, cell);
        return shown.Contains('[') && !cell.Contains('[') ? Mask(cell) : shown;
    }

    /// <summary>One or more parts in one cell: part numbers as typed, what stands behind them without what may be personal.</summary>
    public static string ShowParts(ColumnSample column, string cell) => string.Concat(PartSeparator().Split(cell).Select(p => ShowPart(column, p)));

    private static string ShowPart(ColumnSample column, string piece) =>
        piece.Length == 0 || PartAndQuantity().IsMatch(piece) ? piece
        : NumberFirst().Match(piece) is { Success: true } part ? part.Groups[1].Value + Show(column, part.Groups[2].Value)
        : Show(column, piece);

    /// <summary>A cell of a column of names of things, such as brands: as typed where the store would keep it so, else without what may be personal.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="field">What the column is read as.</param>
    public static string ShowWord(ColumnSample column, string cell, Field field) =>
        WordCellScrubber.Judge(cell, field.Name, people: false, Words(column.Texts)) is WordVerdict.Stays or WordVerdict.StaysUnlessCustomer ? cell : Show(column, cell);

    /// <summary>A cell without what may be personal.</summary>
    /// <param name="texts">Cells of its column, for their language.</param>
    /// <param name="cell">The cell.</param>
    public static string Scrubbed(IEnumerable<string> texts, string cell) => TextScrubber.Scrub(cell, Words(texts));

    /// <summary>True when a column may hold names, addresses, phone numbers or e-mails, or likely serials, each of which is one household's machine: by what it is taken for, its header, or its cells.</summary>
    public static bool IsPersonal(ColumnSample column, TableReading reading) => IsNamedPersonal(column, reading) || LooksPersonal(column, reading);

    // Days and short numbers identify no one, and masked they would be useless as examples.
    private static bool IsHarmless(ColumnSample column, string cell) =>
        (column.IsDates && DateText.TryDay(cell, DateOrder.DayFirst, out _)) || (column.IsNumbers && cell.Length <= ShortNumber && cell.All(char.IsAsciiDigit));

    private static bool IsNamedPersonal(ColumnSample column, TableReading reading)
    {
        int at = reading.Table.Sample.Columns.ToList().IndexOf(column);
        if (reading.Choice is { } choice && at >= 0)
        {
            for (int f = 0; f < choice.Fields.Count; f++)
            {
                Field field = FieldCatalog.Get(choice.Kind, choice.Fields[f]);
                if (FieldChoice.Chance(choice.Odds[at, f]) >= (field.Personal ? Possible : field.Cleaner == Cleaner.Serial ? Likely : double.PositiveInfinity))
                {
                    return true;
                }
            }
        }

        double[] header = HeaderLexicon.Shipped.Match(column.Name);
        IEnumerable<string> personal = ["serial", "customer_name", "phone", "address", "email", "technician", "~user"];
        return !column.IsDates && personal.Any(p => header[((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(p)] >= Named);
    }

    private static bool LooksPersonal(ColumnSample column, TableReading reading) => !column.IsDates && MayHoldCustomers(reading) && CellFeatures.LooksPersonal(column);

    // Free text may name people, but nobody can judge a column by x and 0 alone.
    private static string Words(ColumnSample column, string cell)
    {
        string shown = Scrubbed(column.Texts, cell);
        return Mark().Replace(shown, "").Any(char.IsLetter) ? shown : Mask(cell);
    }

    /// <summary>False for a table that is surely a list of things, such as prices: there 555-0178 is a part number.</summary>
    private static bool MayHoldCustomers(TableReading reading) => reading.AsksKind || (FieldCatalog.Find(reading.Kind)?.Any(f => f.Personal) ?? true);

    [GeneratedRegex(@"\[[^]]*\]")]
    private static partial Regex Mark();

    [GeneratedRegex(@"^(\s*(?=\S*\d)[^\s@]{2,20})(\s.*)$", RegexOptions.Singleline)]
    private static partial Regex NumberFirst();

    [GeneratedRegex(@"([;,+|\n])")]
    private static partial Regex PartSeparator();

    // 339-4587, 2x K41/B, 90-3 (2): one code without blanks, with or without a quantity.
    [GeneratedRegex(@"^\s*(\d{1,2}\s*[x×*]\s*)?(?=\S*\d)[^\s@]{2,20}(\s*[x×*]\s*\d{1,2}|\s*\(\d{1,2}\))?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex PartAndQuantity();

    private static bool IsUsual(ColumnSample column, string cell) =>
        column.Texts.Count(t => t.Equals(cell, StringComparison.OrdinalIgnoreCase)) >= (column.Filled < FewCells ? 2 : Usual) && cell.Count(char.IsAsciiDigit) < Usual;

    private static FileWords Words(IEnumerable<string> texts)
    {
        var vote = new LanguageVote();
        foreach (string text in texts.Take(200))
        {
            var tokens = new TextTokens(text);
            for (int i = 0; i < tokens.Count; i++)
            {
                vote.Add(tokens[i].Hash);
            }
        }

        return FileWords.Of(Complaints.Value, vote.Languages);
    }
}
