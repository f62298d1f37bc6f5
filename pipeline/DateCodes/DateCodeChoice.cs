using System.Globalization;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.DateCodes;

/// <summary>The owner's answer about a learned date code.</summary>
/// <param name="Brand">Brand as listed.</param>
/// <param name="SerialForm">Form of its serials.</param>
/// <param name="DateCode">Where the date stands, in words.</param>
/// <param name="IsRight">Yes or no.</param>
/// <param name="Rule">The rule as the list had it.</param>
internal sealed record DateCodeAnswer(string Brand, string SerialForm, string DateCode, bool IsRight, SerialDateRuleText Rule);

/// <summary>
/// Decides which learned date codes are used: the owner's answer holds; without one, what is proven is used and the rest is
/// asked about. A code that the owner approved is used even if the files no longer show it.
/// </summary>
internal static class DateCodeChoice
{
    /// <summary>Decides about each code.</summary>
    /// <param name="learned">What the files show now.</param>
    /// <param name="answers">The owner's answers; of two about one code the last holds.</param>
    public static IReadOnlyList<DateCodeRule> Decide(IReadOnlyList<LearnedDateCode> learned, IReadOnlyList<DateCodeAnswer> answers)
    {
        var given = new Dictionary<CodeKey, DateCodeAnswer>();
        foreach (DateCodeAnswer answer in answers)
        {
            given[new CodeKey(CompactKey.From(answer.Brand), answer.SerialForm, answer.DateCode)] = answer;
        }

        var shown = learned.Select(Key).ToHashSet();
        (CodeKey Key, DateCodeAnswer Answer)[] kept = [.. given.Where(a => a.Value.IsRight && !shown.Contains(a.Key)).Select(a => (a.Key, a.Value))];

        // Serials of one form follow one code: no other is used beside the approved one.
        var settled = kept.Select(a => a.Key.Form).ToHashSet();
        return
        [
            .. learned.Select(l => Rule(l, Basis(l, given.GetValueOrDefault(Key(l)), settled.Contains(Key(l).Form)))),
            .. kept.Select(a => Rule(a.Answer)),
        ];
    }

    private static string Basis(LearnedDateCode code, DateCodeAnswer? answer, bool hasOther) => answer switch
    {
        { IsRight: true } => "approved",
        { IsRight: false } => "rejected",
        _ => code.Trust == DateCodeTrust.Proven && !hasOther ? "proven" : "asked",
    };

    private static CodeKey Key(LearnedDateCode code) => new(CompactKey.From(code.Brand), code.Form, code.Code);

    private static DateCodeRule Rule(LearnedDateCode code, string basis) => Make(
        code.Brand, code.Form, code.Code, code.Sentence, basis, code.Rule, code.Agree, code.Disagree, Join(code.Confirming), Join(code.Contradicting));

    private static DateCodeRule Rule(DateCodeAnswer answer) => Make(
        answer.Brand,
        answer.SerialForm,
        answer.DateCode,
        string.Create(CultureInfo.InvariantCulture, $"{answer.Brand} writes its build date into serials of {answer.SerialForm.Length} characters ({answer.DateCode}): you confirmed this."),
        "approved",
        answer.Rule);

    private static DateCodeRule Make(
        string brand, string form, string code, string sentence, string basis, SerialDateRuleText rule, int agree = 0, int disagree = 0, string? confirming = null, string? contradicting = null) => new(
        brand, form, code, sentence, basis is "proven" or "approved", basis, agree, disagree, confirming, contradicting, 0,
        rule.Pattern ?? "", rule.YearLetters, rule.YearOfFirst, rule.CycleYears, rule.MonthLetters, rule.Weeks);

    private static string? Join(IReadOnlyList<string> examples) => examples.Count == 0 ? null : string.Join(" | ", examples);

    private readonly record struct CodeKey(string Brand, string SerialForm, string DateCode)
    {
        public (string, string) Form => (Brand, SerialForm);
    }
}
