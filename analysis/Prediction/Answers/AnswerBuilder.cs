using System.Globalization;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>Puts an answer together. Pure: the same call, model and facts give the same answer.</summary>
public static class AnswerBuilder
{
    /// <summary>Answers one call.</summary>
    public static Answer Build(Call call, ShippedModel model, LookupFacts facts, AnswerOptions options)
    {
        double[] odds = model.Odds(call);
        AnswerEvidence evidence = EvidenceOf(call, model, options);
        bool enough = evidence.Source != "none";
        IReadOnlyList<LikelyNeed> needs = enough ? NeedsOf(call, model, odds, evidence, facts, options) : [];
        CallCheckPlan? checks = CallChecks.Plan(
            facts.Checks, call.ApplianceType, call.ComplaintKind, [.. model.Needs.Select((n, k) => (n, odds[k]))]);
        return new Answer
        {
            Call = call,
            Evidence = evidence,
            Needs = needs,
            OtherOdds = Math.Max(0, 1 - needs.Sum(n => n.Odds)),
            Carry80 = Carry(model, odds, model.Carry80, call, enough),
            Carry95 = Carry(model, odds, model.Carry95, call, enough),
            Checks = checks,
            WhileThere = WhileThereAdvice.For(call, needs, facts, options),
            Cautions = [.. Cautions(checks).Distinct(StringComparer.Ordinal)],
            Notes = [.. NotesOn(call, model, enough, options), .. MovedBy.Clause(call, model, needs, evidence) is { } moved ? new[] { moved } : []],
        };
    }

    /// <summary>The deepest level with enough jobs; <c>none</c> where even the type has too few.</summary>
    private static AnswerEvidence EvidenceOf(Call call, ShippedModel model, AnswerOptions options)
    {
        IReadOnlyList<LevelCount> levels = model.Counts.EvidenceFor(call);
        if (OnAnyType(call, model)?.Sum() is { } onAny && onAny >= options.LeastJobs)
        {
            return new AnswerEvidence("complaint", "", onAny, levels);
        }

        LevelCount? found = levels.LastOrDefault(l => l.Jobs >= options.LeastJobs && l.Level is not (BackOffLevel.TypeComplaintAge or BackOffLevel.FamilyComplaintAge));
        string source = found?.Level switch
        {
            BackOffLevel.ModelComplaint => "model",
            BackOffLevel.FamilyComplaint => "family",
            BackOffLevel.TypeComplaint or BackOffLevel.Type when call.ApplianceType == Call.Unknown => "unknown type",
            BackOffLevel.TypeComplaint => "type",
            BackOffLevel.Type => "type, any complaint",
            BackOffLevel.All => "all jobs",
            _ => "none",
        };
        return new AnswerEvidence(source, found?.Level ?? "", found?.Jobs ?? 0, levels);
    }

    /// <summary>Counts of the complaint on any type where the type had to be read from it, or null.</summary>
    private static int[]? OnAnyType(Call call, ShippedModel model) =>
        call.ComplaintKind is Need.NoComplaint or Need.OtherComplaint || model.TypesOf(call).Count == 0 ? null : model.Counts.OnAnyType(call.ComplaintKind);

    private static IReadOnlyList<LikelyNeed> NeedsOf(Call call, ShippedModel model, double[] odds, AnswerEvidence evidence, LookupFacts facts, AnswerOptions options)
    {
        int[]? similar = evidence.Source == "complaint" ? OnAnyType(call, model) : model.Counts.Levels.FirstOrDefault(l => l.Level.Name == evidence.Level)?.Find(call);
        Dictionary<string, int> places = NeedList.Places(model.Counts.Needs);
        return
        [
            .. Enumerable.Range(0, odds.Length)
                .Where(k => odds[k] >= options.LeastOdds)
                .OrderByDescending(k => odds[k]).ThenBy(k => k)
                .Take(options.MostNeeds)
                .Select(k => NeedOf(call, model.Needs[k], odds[k], similar?[places[model.Needs[k]]] ?? 0, facts, options)),
        ];
    }

    private static LikelyNeed NeedOf(Call call, string need, double odds, int similar, LookupFacts facts, AnswerOptions options)
    {
        string word = AnswerOptions.Word(odds);
        if (need is Need.NoPart or Need.OtherPart)
        {
            return new LikelyNeed(need, odds, word, similar, [], [], null, false);
        }

        AnswerPart[] parts = [.. PartsOf(call, need, facts)];
        Companion[] companions = [.. facts.Companions(call.ApplianceType, need).Where(c => c.Share >= options.LeastCompanionShare && c.Lift >= options.LeastLift && c.LiftLower > 1)];
        decimal price = parts.Length == 0 ? 0 : parts[0].Part.Price ?? 0;
        double lost = parts.Length > 0 && parts[0].Part.ReturnableDays is > 0 ? options.ReturnShare : options.LostShare;
        double threshold = BringRule.Threshold((double)options.HandlingCost + (double)price * lost, (double)options.SecondVisitCost);
        return new LikelyNeed(need, odds, word, similar, parts, companions, threshold, odds >= threshold);
    }

    private static IEnumerable<AnswerPart> PartsOf(Call call, string need, LookupFacts facts) =>
        facts.Parts(call.ModelFamily, need)
            .Select(p => (Part: p, OnModel: facts.JobsOnModel(call.ModelNumber, p.PartNumber)))
            .OrderByDescending(p => p.Part.Available).ThenByDescending(p => p.OnModel).ThenByDescending(p => p.Part.TimesSeen).ThenByDescending(p => p.Part.Listed)
            .ThenBy(p => p.Part.PartNumber, StringComparer.Ordinal)
            .Take(3)
            .Select(p => new AnswerPart(
                p.Part, p.OnModel, p.OnModel > 0 ? "this model" : p.Part.TimesSeen > 0 ? "family jobs" : "list", [.. facts.Vans(p.Part.PartNumber)]));

    private static CarryList Carry(ShippedModel model, double[] odds, CarryLimits limits, Call call, bool enough)
    {
        IReadOnlyList<int> members = enough ? CarrySet.Members(odds, limits.For(call.ApplianceType, call.ComplaintKind)) : [];
        return new CarryList(limits.Promise, [.. members.Select(k => model.Needs[k])], members.Sum(k => odds[k]));
    }

    private static IEnumerable<string> Cautions(CallCheckPlan? plan)
    {
        foreach (CheckStep step in plan?.Steps.OrderBy(s => s.Check.IsSafety ? 0 : 1).ThenBy(s => s.Place) ?? Enumerable.Empty<CheckStep>())
        {
            foreach (string caution in (string[])[step.Check.IsSafety ? step.Check.What : "", step.Check.Caution, step.Opening?.Caution ?? ""])
            {
                if (caution.Length > 0)
                {
                    yield return caution;
                }
            }
        }

        yield return Safety.Caution;
    }

    private static IEnumerable<string> NotesOn(Call call, ShippedModel model, bool enough, AnswerOptions options)
    {
        if (!enough)
        {
            yield return $"Too few jobs to say: fewer than {options.LeastJobs} closed jobs like this one.";
        }

        if (call.ModelNote is { } note)
        {
            yield return note;
        }

        bool noAppliance = call.ModelFamily is null && call.ApplianceType == Call.Unknown;
        if (noAppliance && model.TypesOf(call) is { Count: > 0 } types)
        {
            string likely = string.Join(", ", types.Where(t => t.Odds >= 0.05).Take(4).Select(t => string.Create(CultureInfo.InvariantCulture, $"{t.Type} {t.Odds * 100:0} %")));
            yield return $"The type of appliance is not given. The odds add up over the types that such a complaint comes with: {likely}. Name the type for better odds.";
        }
        else if (noAppliance)
        {
            yield return "Neither the model nor the type of the appliance is known: the odds are over all kinds of appliances and say little. Name the type.";
        }
        else if (call.ModelFamily is null)
        {
            yield return model.Counts.Levels.FirstOrDefault(l => l.Level.Name == BackOffLevel.Type)?.Find(call) is null
                ? "The model is not known, nor any closed job on this type of appliance: the odds are those of other types and say little."
                : "The model is not known: odds are those of this type of appliance.";
        }
        else if (model.Counts.Levels.FirstOrDefault(l => l.Level.Name == BackOffLevel.FamilyComplaint) is { } level && level.Find(call) is null)
        {
            yield return $"No closed job yet on family {call.ModelFamily} with this complaint: odds lean on wider groups.";
        }

        if (call.ComplaintKind is Need.NoComplaint)
        {
            yield return noAppliance ? "No complaint given." : "No complaint given: odds are those of any call on such an appliance.";
        }
        else if (call.ComplaintKind is Need.OtherComplaint)
        {
            yield return noAppliance ? "We do not recognize this complaint." : "We do not recognize this complaint, so the odds rest on its words and on the appliance.";
        }

        if (call.AgeYears is null)
        {
            yield return "The age is not known: the serial number or the year of purchase would sharpen the odds.";
        }
    }
}
