using System.Globalization;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>What is worth a look while the appliance is open, each with the figure behind it.</summary>
internal static class WhileThereAdvice
{
    private const int Most = 4;
    private const string Hose = "fill_hose";

    /// <summary>Advice for a call; what the call itself probably needs is left out.</summary>
    public static IReadOnlyList<WhileThere> For(Call call, IReadOnlyList<LikelyNeed> needs, LookupFacts facts, AnswerOptions options)
    {
        if (call.AgeYears is not { } age)
        {
            return [];
        }

        HashSet<string> likely = [.. needs.Where(n => n.Bring).Select(n => n.Need)];
        var advice = new List<WhileThere>();
        if (call.ApplianceType is "washer" or "dishwasher" && age >= options.HoseAge && !likely.Contains(Hose))
        {
            advice.Add(new WhileThere(
                Hose,
                "Look at the fill hoses: bulges, cracks, rusty couplings. Change them in pairs.",
                string.Create(CultureInfo.InvariantCulture, $"the appliance is {age:0.#} years old; rubber hoses are due for a look from {options.HoseAge:0} years")));
        }

        advice.AddRange(facts.Risks(call.ApplianceType, call.ModelFamily, call.CustomerKind, age)
            .Where(r => r.Chance >= options.LeastYearRisk && !likely.Contains(r.Component))
            .OrderByDescending(r => r.Chance).ThenBy(r => r.Component, StringComparer.Ordinal)
            .Take(Most)
            .Select(r => new WhileThere(
                r.Component,
                $"Have a look at the {r.Component.Replace('_', ' ')}.",
                string.Create(CultureInfo.InvariantCulture, $"{r.Chance * 100:0} % {(r.Basis == "register" ? "fail" : "come back with it")} within a year at this age ({r.Events} failures near it)"))));
        return advice;
    }
}
