using System.Globalization;
using PartsSignal.Analysis.Prediction.ModelFiles;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>
/// Says what moved the odds away from the counts of similar jobs shown beside them. Without it, "8 %, 10 of 60 jobs"
/// above "9 %, 3 of 60" looks like a mistake.
/// </summary>
internal static class MovedBy
{
    private const double LeastShift = 0.02;
    private const double LeastGap = 0.05;
    private const int FewJobs = 20;

    /// <summary>The clause, or null where the odds agree with the counts.</summary>
    /// <param name="call">The call.</param>
    /// <param name="model">The predictor.</param>
    /// <param name="needs">Needs as shown.</param>
    /// <param name="evidence">The similar jobs.</param>
    public static string? Clause(Call call, ShippedModel model, IReadOnlyList<LikelyNeed> needs, AnswerEvidence evidence)
    {
        if (evidence.Source is "none" or "all jobs" || evidence.Jobs == 0 || !SeemContradicted(needs, evidence.Jobs))
        {
            return null;
        }

        Dictionary<string, int> places = NeedList.Places(model.Needs);
        double[] with = Odds(call);
        string[] facts =
        [
            .. Facts(call).Select(f => (f.Name, Shift: with.Zip(Odds(f.Without), (a, b) => Math.Abs(a - b)).Max()))
                .Where(f => f.Shift >= LeastShift).OrderByDescending(f => f.Shift).Take(2).Select(f => f.Name),
        ];
        return evidence.Jobs < FewJobs
            ? $"Only {evidence.Jobs} similar {(evidence.Jobs == 1 ? "job" : "jobs")}, so the odds also draw on similar complaints and related models{(facts.Length > 0 ? $", and on {string.Join(" and ", facts)}" : "")}."
            : facts.Length > 0
            ? $"Where the odds differ from the counts of jobs, it is because they also take into account {string.Join(" and ", facts)}."
            : "Where the odds differ from the counts of jobs, they also draw on similar complaints and related models.";

        double[] Odds(Call asked)
        {
            double[] all = model.Odds(asked);
            return [.. needs.Select(n => all[places[n.Need]])];
        }
    }

    /// <summary>True where odds and counts are five points or more apart, or stand in different orders.</summary>
    public static bool SeemContradicted(IReadOnlyList<LikelyNeed> needs, int jobs)
    {
        for (int i = 0; i < needs.Count; i++)
        {
            if (Math.Abs(needs[i].Odds - (double)needs[i].SimilarJobs / jobs) >= LeastGap || (i > 0 && needs[i].SimilarJobs > needs[i - 1].SimilarJobs))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Facts beside type and complaint that an answer can rest on, and the call without each.</summary>
    private static IEnumerable<(string Name, Call Without)> Facts(Call call)
    {
        if (call.AgeYears is { } age)
        {
            string years = age < 1.5 ? "about a year or less" : string.Create(CultureInfo.InvariantCulture, $"{age:0} years");
            yield return ($"the age ({years})", call with { AgeYears = null, MadeOn = null, AgeBasis = Call.Unknown });
        }

        if (call.Earlier.Count > 0)
        {
            yield return (call.Earlier.Count == 1 ? "the earlier visit" : "the earlier visits", call with { Earlier = [] });
        }

        if (call.ErrorCode is { } code)
        {
            yield return ($"the error code {code}", call with { ErrorCode = null });
        }

        if (call.ComplaintText is not null)
        {
            yield return ("the words of the complaint", call with { ComplaintText = null });
        }

        if (call.ModelFamily is not null)
        {
            yield return ("the model", call with { ModelFamily = null, ModelNumber = null, MadeOn = null });
        }

        if (call.Brand is not null)
        {
            yield return ("the brand", call with { Brand = null });
        }

        yield return ("the kind of customer", call with { CustomerKind = call.CustomerKind == "contract" ? "household" : "contract" });
        yield return ("the time of year", call with { Month = (call.Month + 5) % 12 + 1 });
    }
}
