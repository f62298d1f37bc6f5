using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Learning;

/// <summary>The complaint words of a shop: its tables, in the languages of its logs, and its own frequent phrases.</summary>
internal static class ShopComplaints
{
    /// <summary>The rules, in their order.</summary>
    /// <param name="input">Folder with the shop's own tables.</param>
    /// <param name="facts">What its store says of its languages and phrases.</param>
    public static IReadOnlyList<KeywordRule> Rules(string input, LookupFacts facts)
    {
        IReadOnlyList<KeywordRule> all = WordSets.ComplaintRules(input);
        IEnumerable<KeywordRule> own = facts.OwnWords.Select(o => new KeywordRule(o.ComplaintKind, null, Tokenizer.Folded(o.Words), 0));
        return [.. all.Where(r => facts.Languages.Count == 0 || r.IsIn(facts.Languages)).Concat(own).Select((r, i) => r with { Order = i })];
    }

    /// <summary>The table.</summary>
    public static ComplaintWordTable Table(string input, LookupFacts facts) => new(Rules(input, facts), Languages(facts));

    /// <summary>Languages of the shop's logs, or null if not known.</summary>
    public static IReadOnlyList<string>? Languages(LookupFacts facts) => facts.Languages.Count == 0 ? null : facts.Languages;
}
