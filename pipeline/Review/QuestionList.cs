using System.Security.Cryptography;
using System.Text;

namespace PartsSignal.Pipeline.Review;

/// <summary>One thing the program asks about.</summary>
/// <param name="Index">Its place in the list, from 0.</param>
/// <param name="Code">Nine letters that tell it from every other question, whatever a spreadsheet does to the row.</param>
/// <param name="Text">What was typed.</param>
/// <param name="About">More that helps to answer, such as the appliance type or an example job.</param>
/// <param name="Times">How many jobs or lines wait for the answer, or null where the list does not count.</param>
/// <param name="Suggestions">Likely answers.</param>
/// <param name="Answer">The answer given, or empty.</param>
/// <param name="Note">Why an earlier answer could not be used, or empty.</param>
internal sealed record ReviewQuestion(int Index, string Code, string Text, string About, string? Times, IReadOnlyList<string> Suggestions, string Answer, string Note);

/// <summary>A review list as questions to answer.</summary>
/// <param name="File">Name of the list.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Help">What to answer.</param>
/// <param name="Choices">All answers to choose from; empty: any text.</param>
/// <param name="Questions">Its rows, those that most jobs wait for first.</param>
internal sealed record QuestionList(string File, string Title, string Help, IReadOnlyList<string> Choices, IReadOnlyList<ReviewQuestion> Questions)
{
    private const int CodeLetters = 9;

    // No vowels: a code is no word that a spreadsheet would correct, and no number or date.
    private const string CodeAlphabet = "bcdfghjkmpqrstvwxz";

    /// <summary>True if what was typed may be right as it is, so that a tick is an answer.</summary>
    public bool MayBeRight => File is ReviewNames.Families or ReviewNames.Appliances;

    /// <summary>What to do where names can be ticked.</summary>
    public string HelpWithTicks => File switch
    {
        ReviewNames.Families => "These names were learned from your model numbers. Tick those that are right. If one is wrong, type the right name.",
        ReviewNames.Appliances => "Choose which type this is another name for, or “other”. Tick it to keep it as a type of its own.",
        _ => Help,
    };

    /// <summary>True if the list says how many jobs or lines wait.</summary>
    public bool Counts => Questions.Any(q => !string.IsNullOrEmpty(q.Times));

    /// <summary>How many rows have no answer.</summary>
    public int Open => Questions.Count(q => q.Answer.Length == 0);

    /// <summary>All lists of a run that ask something, with the answers given since.</summary>
    /// <param name="review">Folder of the lists.</param>
    /// <param name="input">Folder of the shop's files.</param>
    public static IReadOnlyList<QuestionList> All(string review, string input)
    {
        var plain = new PlainAnswers(input);
        return [.. ReviewList.All.OrderBy(l => l.Order).Select(l => Read(review, input, l, plain)).Where(l => l.Questions.Count > 0)];
    }

    /// <summary>Saves answers beside the shop's files, where the next run reads them.</summary>
    /// <param name="review">Folder of the lists.</param>
    /// <param name="input">Folder of the shop's files.</param>
    /// <param name="answers">Index of a row to its answer; an empty one takes an earlier answer back.</param>
    /// <returns>A sentence for each answer that means nothing here; those are kept, so that they can be corrected.</returns>
    public IReadOnlyList<string> Save(string review, string input, IReadOnlyDictionary<int, string> answers)
    {
        ReviewRow[] asked = [.. Rows(review)];
        ReviewRow[] earlier = [.. ReviewFile.Read(input, File)];
        Dictionary<string, string> given = earlier.GroupBy(Name).ToDictionary(g => g.Key, g => g.Last().Answer, StringComparer.Ordinal);
        var plain = new PlainAnswers(input);
        var unknown = new List<string>();
        foreach ((int index, string answer) in answers.Where(a => a.Key < asked.Length))
        {
            string? name = string.IsNullOrWhiteSpace(answer) ? "" : plain.Name(File, answer, Choices);
            given[Name(asked[index])] = name ?? answer.Trim();
            if (name is null)
            {
                unknown.Add($"{Title}: “{answer.Trim()}” is not on the list. Choose a name from the list, or type “{PlainAnswers.Ignore}”.");
            }
        }

        string[] columns = [.. asked[0].Cells.Keys];
        string path = Path.Combine(input, File);
        ReviewFile.Write(path + ".part", columns, asked.Concat(earlier).DistinctBy(Name)
            .Select(row => (Row: row, Answer: given.GetValueOrDefault(Name(row), row.Answer)))
            .Where(r => r.Answer.Length > 0)
            .Select(r => (IReadOnlyList<string?>)[.. columns.Select(c => c == ReviewFile.AnswerColumn ? r.Answer : c == ReviewFile.NoteColumn ? "" : r.Row[c])]));
        System.IO.File.Move(path + ".part", path, overwrite: true);
        return [.. unknown.Distinct(StringComparer.Ordinal)];
    }

    /// <summary>A stored name as people say it: "drain pump" for <c>drain_pump</c>. Numbers and models stay as they are.</summary>
    public string Said(string name) => Choices.Count > 0 ? name.Replace('_', ' ') : name;

    private IReadOnlyList<ReviewRow> Rows(string review) => System.IO.File.Exists(Path.Combine(review, File)) ? ReviewFile.Read(review, File) : [];

    private string Name(ReviewRow row) => ReviewList.All.Single(l => l.File == File).Name(c => row[c]);

    private static QuestionList Read(string review, string input, ReviewList shape, PlainAnswers plain)
    {
        var list = new QuestionList(shape.File, shape.Title, shape.Help, plain.Choices(shape.File), []);
        IReadOnlyList<ReviewRow> rows = list.Rows(review);
        var given = ReviewFile.Read(input, shape.File).GroupBy(list.Name).ToDictionary(g => g.Key, g => g.Last().Answer, StringComparer.Ordinal);
        return list with
        {
            // A complaint, component or type of the shop's own is an answer too.
            Choices = list.Choices.Count == 0 ? [] : [.. list.Choices.Concat(rows.Select(r => r[shape.File == ReviewNames.Appliances ? shape.Typed : "counted_as"]).Where(c => c.Length > 0).Order(StringComparer.Ordinal)).Distinct(StringComparer.Ordinal)],
            Questions = [.. rows.Select((r, i) => new ReviewQuestion(
                i,
                CodeOf(shape.File, list.Name(r)),
                r[shape.Typed].Length > 0 ? r[shape.Typed] : r["job_id"],
                string.Join(" \u00b7 ", shape.About.Select(a => r[a]).Where(a => a.Length > 0)),
                r.Cells.ContainsKey("times") ? r["times"] : null,
                [.. new[] { "suggestion_1", "suggestion_2", "suggestion_3" }.Select(c => r[c]).Where(c => c.Length > 0)],
                given.GetValueOrDefault(list.Name(r), r.Answer),
                r[ReviewFile.NoteColumn]))],
        };
    }

    private static string CodeOf(string list, string name)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(list + "\n" + name));
        return string.Concat(hash.Take(CodeLetters).Select(b => CodeAlphabet[b % CodeAlphabet.Length]));
    }
}
