using System.Globalization;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Reports.Components;
using PartsSignal.Reports.Workbook;

namespace PartsSignal.Pipeline.Review;

/// <summary>The answers of a workbook.</summary>
/// <param name="Lists">Index of a question to its answer, by list; only questions that were answered.</param>
/// <param name="Faults">A sentence for each answer that cannot be used, with sheet and row.</param>
internal sealed record WorkbookAnswers(IReadOnlyDictionary<QuestionList, IReadOnlyDictionary<int, string>> Lists, IReadOnlyList<string> Faults)
{
    /// <summary>Number of answers.</summary>
    public int Count => Lists.Values.Sum(l => l.Count);

    /// <summary>Saves them beside the shop's files, where the next run reads them.</summary>
    /// <param name="review">Folder of the lists.</param>
    /// <param name="input">Folder of the shop's files.</param>
    /// <returns>A sentence for each answer that could not be used.</returns>
    public IReadOnlyList<string> Save(string review, string input) =>
        [.. Faults, .. Lists.Where(l => l.Value.Count > 0).SelectMany(l => l.Key.Save(review, input, l.Value))];
}

/// <summary>
/// All review lists in one workbook to fill in: a sheet for each, cells of text, suggestions A to C, and a drop-down in the
/// answer column. It may be sorted, filtered and saved by any spreadsheet before it is read back.
/// </summary>
internal static class ReviewWorkbook
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "review-questions.xlsx";

    /// <summary>True for the workbook's own name, and for those that browsers give a second copy of it.</summary>
    public static bool IsNamedSo(string name) =>
        name.StartsWith(Path.GetFileNameWithoutExtension(FileName), StringComparison.OrdinalIgnoreCase)
        && name.EndsWith(Path.GetExtension(FileName), StringComparison.OrdinalIgnoreCase);

    private const string AnswerHead = "Your answer";
    private const string CodeHead = "Code";
    private const string TypedHead = "Typed in your files";
    private const string ChoicesSheet = "choices";

    private static readonly string[] Heads = [TypedHead, "Details", "Times", "A", "B", "C", AnswerHead, "Note", CodeHead];

    /// <summary>Writes the workbook.</summary>
    /// <param name="stream">Receives the bytes.</param>
    /// <param name="lists">The lists.</param>
    public static void Write(Stream stream, IReadOnlyList<QuestionList> lists)
    {
        QuestionList[] named = [.. lists.Where(l => l.Choices.Count > 0)];
        string[][] choices = [.. named.Select(l => l.Choices.Select(l.Said).Append(PlainAnswers.Ignore).ToArray())];
        int longest = choices.Length == 0 ? 0 : choices.Max(c => c.Length);
        var offered = new WorkbookSheet(ChoicesSheet, [.. named.Select(l => l.Title)], [.. Enumerable.Range(0, longest).Select(r => (IReadOnlyList<WorkbookCell>)[.. choices.Select(c => Text(r < c.Length ? c[r] : null))])]) { IsHidden = true };
        WorkbookWriter.Write(stream, [Instructions(lists), .. lists.Select(l => Sheet(l, Array.IndexOf(named, l))), .. named.Length > 0 ? new[] { offered } : []]);
    }

    /// <summary>Reads the answers.</summary>
    /// <param name="path">The workbook.</param>
    /// <param name="name">Its name for messages.</param>
    /// <param name="lists">The lists as they are now.</param>
    /// <exception cref="BadInputException">It cannot be read, or holds none of the sheets.</exception>
    public static WorkbookAnswers Read(string path, string name, IReadOnlyList<QuestionList> lists)
    {
        var limits = new ReadingLimits();
        var file = new InputFile(name, path, null);
        if (!file.IsWorkbook)
        {
            throw NotOurs(name);
        }

        var scan = ContentScan.Read(file, limits, CancellationToken.None);
        Workbook workbook = Workbooks.Read(file, scan, limits);
        HashSet<string> sheets = [.. workbook.Sheets()];
        var faults = new List<string>();
        var answers = new Dictionary<QuestionList, IReadOnlyDictionary<int, string>>();
        bool isOurs = false;
        foreach (QuestionList list in lists.Where(l => sheets.Contains(SheetName(l))))
        {
            using WorkbookTable table = workbook.Open(SheetName(list));
            isOurs |= ReadSheet(table, list, answers, faults);
        }

        return isOurs ? new WorkbookAnswers(answers, faults) : throw NotOurs(name);
    }

    private static BadInputException NotOurs(string name) => new($"{name}: this is not the question workbook. Choose the .xlsx you saved here, with its sheets and headings unchanged.");

    private static bool ReadSheet(WorkbookTable table, QuestionList list, Dictionary<QuestionList, IReadOnlyDictionary<int, string>> answers, List<string> faults)
    {
        string[] heads = table.Read() ? table.Row.Texts() : [];
        int answerAt = At(heads, AnswerHead), codeAt = At(heads, CodeHead), typedAt = At(heads, TypedHead);
        if (answerAt < 0 || (codeAt < 0 && typedAt < 0))
        {
            return false;
        }

        var byCode = list.Questions.DistinctBy(q => q.Code).ToDictionary(q => q.Code, StringComparer.OrdinalIgnoreCase);
        ILookup<string, ReviewQuestion> byText = list.Questions.ToLookup(q => q.Text, StringComparer.Ordinal);
        var given = new Dictionary<int, string>();
        while (table.Read())
        {
            string typed = table.Row[answerAt].Trim().ToString();
            if (typed.Length == 0)
            {
                continue;
            }

            string place = string.Create(CultureInfo.InvariantCulture, $"{list.Title}, row {table.Line}");
            ReviewQuestion? question = byCode.GetValueOrDefault(Cell(table, codeAt)) ?? (byText[Cell(table, typedAt)].ToArray() is [var only] ? only : null);
            if (question is null)
            {
                faults.Add($"{place}: this question is no longer open, or its code is missing. The answer was not used.");
            }
            else if (Answer(list, question, typed, table.Row.Form(answerAt)) is var (answer, why) && answer is null)
            {
                faults.Add($"{place}: {why}");
            }
            else
            {
                given[question.Index] = answer;
            }
        }

        answers[list] = given;
        return true;
    }

    private static (string? Answer, string? Why) Answer(QuestionList list, ReviewQuestion question, string typed, CellForm form)
    {
        if (question.Suggestions.Count > 0 && Letter(typed) is { } letter)
        {
            return letter < question.Suggestions.Count ? (question.Suggestions[letter], null) : (null, $"there is no suggestion {typed}. Choose another letter, or type the answer.");
        }

        if (form == CellForm.Text)
        {
            return (typed, null);
        }

        string? restored = SheetAnswer.Restore(typed, form, [.. question.Suggestions, .. list.Choices, question.Text])
            ?? (list.File == ReviewNames.Serials ? SheetAnswer.Month(typed, form) : null)
            ?? (form == CellForm.Number ? typed : null);
        return restored is not null ? (restored, null)
            : (null, form == CellForm.Error ? "the cell shows an error. Type the answer again."
            : $"the spreadsheet changed the answer to {typed}. Type it again with an apostrophe (') in front.");
    }

    private static int? Letter(string typed) => typed.TrimEnd('.', ')') switch
    {
        "A" or "a" => 0,
        "B" or "b" => 1,
        "C" or "c" => 2,
        _ => null,
    };

    private static int At(string[] heads, string head) => Array.FindIndex(heads, h => h.Trim().Equals(head, StringComparison.OrdinalIgnoreCase));

    private static string Cell(WorkbookTable table, int column) => column < 0 ? "" : table.Row[column].Trim().ToString();

    private static string SheetName(QuestionList list) => list.Title;

    private static WorkbookSheet Instructions(IReadOnlyList<QuestionList> lists) => new("Start here", ["How to answer"],
    [
        .. new[]
        {
            "Each sheet asks about words or numbers in your files. The ones that affect the most jobs come first.",
            lists.Any(l => l.Questions.Any(q => q.Suggestions.Count > 0))
                ? "Fill in the yellow column. Choose from its list, type the letter of a suggestion (A, B or C), or type the answer in your own words."
                : "Fill in the yellow column. Choose from its list, or type the answer in your own words.",
            "Type “ignore” to skip a row for good. Leave it blank to answer it later.",
            "You may sort and filter. Please leave the headings and the column “Code” as they are.",
            "Save the file as .xlsx. Then open Words in PartsSignal and press “Read the answers”.",
        }.Select(t => (IReadOnlyList<WorkbookCell>)[Text(t)]),
        .. lists.Select(l => (IReadOnlyList<WorkbookCell>)[Text($"{l.Title}: {l.Help}")]),
    ]);

    private static WorkbookSheet Sheet(QuestionList list, int choices)
    {
        IReadOnlyList<WorkbookCell>[] rows = [.. list.Questions.OrderBy(q => q.Answer.Length > 0).ThenBy(q => q.Index).Select(q => Row(list, q))];

        // A column with nothing in any row only takes room.
        int[] shown = [.. Enumerable.Range(0, Heads.Length).Where(c => Heads[c] == AnswerHead || Array.Exists(rows, r => r[c].Value is not (null or "")))];
        char[] suggested = [.. shown.Index().Where(c => Heads[c.Item].Length == 1).Select(c => (char)('A' + c.Index))];
        string? offered = choices >= 0 ? string.Create(CultureInfo.InvariantCulture, $"{ChoicesSheet}!${(char)('A' + choices)}$2:${(char)('A' + choices)}${list.Choices.Count + 2}")
            : suggested.Length == 0 ? null : $"${suggested[0]}2:${suggested[^1]}2";
        return new WorkbookSheet(SheetName(list), [.. shown.Select(c => Heads[c])], [.. rows.Select(r => (IReadOnlyList<WorkbookCell>)[.. shown.Select(c => r[c])])])
        {
            Form = new WorkbookForm(Array.FindIndex(shown, c => Heads[c] == AnswerHead), offered),
        };
    }

    private static IReadOnlyList<WorkbookCell> Row(QuestionList list, ReviewQuestion question) =>
    [
        Text(question.Text),
        Text(question.About),
        long.TryParse(question.Times, NumberStyles.None, CultureInfo.InvariantCulture, out long times) ? new WorkbookCell(times, CellKind.Count) : Text(question.Times),
        .. Enumerable.Range(0, 3).Select(i => Text(i < question.Suggestions.Count ? list.Said(question.Suggestions[i]) : null)),
        Text(list.Said(question.Answer)),
        Text(question.Note),
        Text(question.Code),
    ];

    private static WorkbookCell Text(string? text) => new(text, CellKind.Text);
}
