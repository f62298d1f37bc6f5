using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Which columns hold codes, and what a list of codes says about them: the column with the words, and the field that the words belong to.</summary>
internal static class CodeMeanings
{
    private const int FewestValues = 2;
    private const int LongestCode = 10;
    private const double MostlyKnown = 0.6;

    /// <summary>True for a column of short texts without blanks.</summary>
    public static bool IsCodes(ColumnSample column)
    {
        string[] texts = [.. column.Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(60)];
        return texts.Length >= FewestValues && !column.IsDates && texts.Count(t => t.Length <= LongestCode && !t.Contains(' ')) * 10 >= texts.Length * 9;
    }

    /// <summary>The column of a list with the words for its codes, or null if it has none.</summary>
    /// <param name="list">The list.</param>
    /// <param name="key">Its column of codes.</param>
    public static ColumnSample? Of(TableSample list, ColumnSample key) => list.Columns
        .Where(c => c != key && !c.IsDates && !c.IsNumbers && c.Filled * 10 >= key.Filled * 9 && c.Distinct * 2 > key.Distinct)
        .OrderBy(c => PlainHeader.Words(c.Name).Any(IsName) ? 0 : 1)
        .ThenByDescending(c => c.Texts.Sum(t => t.Count(char.IsLetter)) / (double)Math.Max(1, c.Filled))
        .FirstOrDefault(c => c.Texts.Average(t => t.Length) > key.Texts.Average(t => t.Length) && c.Texts.Count(t => t.Any(char.IsLetter)) * 10 >= c.Filled * 9);

    /// <summary>The field that codes give: what the words of the list are tells it, else the headers and the list's name; null if nothing does.</summary>
    /// <param name="fields">Fields that the table with the codes still lacks.</param>
    /// <param name="codes">The column of codes.</param>
    /// <param name="list">The list.</param>
    /// <param name="meaning">Its column with the words.</param>
    /// <param name="words">The shop's words.</param>
    public static string? Field(IReadOnlyList<string> fields, ColumnSample codes, TableSample list, ColumnSample meaning, WordSets words)
    {
        string[] texts = [.. meaning.Texts.Distinct(StringComparer.OrdinalIgnoreCase).Take(200)];
        double Share(Func<string, bool> knows) => texts.Count(knows) / (double)Math.Max(1, texts.Length);
        (string Field, double Share)[] said =
        [
            ("outcome", Share(w => words.Outcomes.Find(w) is not null)),
            ("appliance_type", Share(w => words.Appliances.Find(w) is not null)),
            ("complaint", Share(w => words.Complaints.Kind(w, null) != Need.OtherComplaint)),
        ];
        string? byWords = said.Where(s => s.Share >= MostlyKnown && fields.Contains(s.Field)).OrderByDescending(s => s.Share).Select(s => s.Field).FirstOrDefault();
        return byWords ?? new[] { codes.Name, meaning.Name, Path.GetFileNameWithoutExtension(list.Sheet ?? list.File) }
            .Select(HeaderLexicon.Shipped.Match)
            .SelectMany(match => fields.Select(f => (Field: f, Score: ((IList<string>)HeaderLexicon.Shipped.Fields).IndexOf(f) is var at and >= 0 ? match[at] : 0)))
            .Where(m => m.Score >= MostlyKnown)
            .OrderByDescending(m => m.Score).Select(m => m.Field).FirstOrDefault();
    }

    /// <summary>Share of a column's codes whose words are words of the field; 0 for a field that has none.</summary>
    /// <param name="field">Outcome or appliance type.</param>
    /// <param name="codes">The column of codes.</param>
    /// <param name="key">The list's column of codes.</param>
    /// <param name="meaning">The list's column of words.</param>
    /// <param name="words">The shop's words.</param>
    public static double Known(string field, ColumnSample codes, ColumnSample key, ColumnSample meaning, WordSets words)
    {
        HashSet<string> used = new(codes.Texts, StringComparer.OrdinalIgnoreCase);
        string[] texts = [.. Enumerable.Range(0, Math.Min(key.Cells.Length, meaning.Cells.Length)).Where(i => used.Contains(key.Cells[i])).Select(i => meaning.Cells[i])];
        return texts.Length == 0 ? 0 : texts.Count(t => (field == "outcome" && words.Outcomes.Find(t) is not null) || (field == "appliance_type" && words.Appliances.Find(t) is not null)) / (double)texts.Length;
    }

    private static bool IsName(string word) => word is "name" or "nombre" or "nom" or "naam" or "nome" or "nazwa" or "bezeichnung" or "description" or "beschreibung" or "descripcion" or "descrizione" or "omschrijving" or "opis" or "meaning" or "text";
}
