using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Review;

/// <summary>Reads answers as people write them: "circulation pump" or "Circ pump" for <c>circulation_pump</c>.</summary>
internal sealed class PlainAnswers
{
    /// <summary>The answer to a row that needs none.</summary>
    public const string Ignore = "ignore";

    /// <summary>The answer that a learned date code is right.</summary>
    public const string Yes = "yes";

    /// <summary>The answer that it is not.</summary>
    public const string No = "no";

    private readonly Lazy<WordSets> _words;
    private readonly Dictionary<string, IReadOnlyList<string>> _choices;

    /// <summary>Prepares the names of a shop.</summary>
    /// <param name="input">Folder with the shop's own tables of words.</param>
    public PlainAnswers(string input)
    {
        _words = new Lazy<WordSets>(() => WordSets.Load(input));
        _choices = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal)
        {
            [ReviewNames.Complaints] = [.. WordSets.ComplaintKinds(input).Order(StringComparer.Ordinal)],
            [ReviewNames.Components] = [.. ComponentRole.Load(input).Select(c => c.Component).Order(StringComparer.Ordinal)],
            [ReviewNames.Outcomes] = [.. Outcome.All.Where(o => o != Outcome.Unknown)],
            [ReviewNames.DateCodes] = [Yes, No],
            [ReviewNames.Appliances] = [.. ApplianceType.Named, ApplianceType.Other],
        };
    }

    /// <summary>The names that a list is answered with, or none for a list that takes any text.</summary>
    /// <param name="list">Name of the list.</param>
    public IReadOnlyList<string> Choices(string list) => _choices.GetValueOrDefault(list, []);

    /// <summary>The name that an answer means, or null where it means none. A list that takes any text takes it as typed.</summary>
    /// <param name="list">Name of the list.</param>
    /// <param name="answer">What was typed; not empty.</param>
    /// <param name="own">Further names that may be meant: the shop's own.</param>
    public string? Name(string list, string answer, IEnumerable<string>? own = null)
    {
        string typed = answer.Trim();
        IReadOnlyList<string> choices = Choices(list);
        if (choices.Count == 0 || typed.Equals(Ignore, StringComparison.OrdinalIgnoreCase))
        {
            return typed;
        }

        string plain = Folded(typed);
        return choices.Concat(own ?? []).FirstOrDefault(c => Folded(c) == plain) ?? Meant(list, typed.Replace('_', ' '));
    }

    private string? Meant(string list, string typed) => list switch
    {
        ReviewNames.Components => _words.Value.Components.Component(typed),
        ReviewNames.Complaints => _words.Value.Complaints.Kind(typed, null) is var kind && kind is not (Need.OtherComplaint or Need.NoComplaint) ? kind : null,
        ReviewNames.Outcomes => _words.Value.Outcomes.Find(typed),
        ReviewNames.DateCodes => YesNoText.TryRead(typed, out bool isRight) ? (isRight ? Yes : No) : null,

        // What no table knows is a type of the shop's own.
        ReviewNames.Appliances => _words.Value.Appliances.Find(typed) ?? ApplianceNames.OwnName(typed),
        _ => null,
    };

    private static string Folded(string name) => string.Join(' ', Tokenizer.Folded(name.Replace('_', ' ')));
}
