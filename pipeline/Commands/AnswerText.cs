using System.Globalization;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Bench;
using PartsSignal.Pipeline.Core;
using PartsSignal.Reports.Components;

namespace PartsSignal.Pipeline.Commands;

/// <summary>An answer for a phone-sized terminal.</summary>
internal static class AnswerText
{
    /// <summary>The odds as a table for programs.</summary>
    public static readonly TableColumn<LikelyNeed>[] NeedColumns =
    [
        new("need", "need", n => n.Need),
        new("odds", "odds", n => n.Odds),
        new("word", "word", n => n.Word),
        new("similar_jobs", "jobs", n => n.SimilarJobs),
        new("part_number", "part", n => n.Parts.Count == 0 ? null : n.Parts[0].Part.PartNumber),
        new("quantity", "qty", n => n.Parts.Count == 0 ? null : n.Parts[0].Part.Quantity),
        new("bring_from", "from", n => n.BringFrom),
        new("bring", "bring", n => n.Bring),
    ];

    /// <summary>Prints the answer.</summary>
    public static void Print(TextWriter writer, Answer answer, string currency)
    {
        var phone = new NarrowText(writer);
        phone.Line(Understood(answer));
        Earlier(phone, answer.Call.Earlier);
        phone.Line(answer.Evidence.Sentence());
        foreach (string note in answer.Notes)
        {
            phone.Line(note, "! ", 2);
        }

        Needs(phone, answer, currency);
        Carry(phone, answer);
        Checks(phone, answer.Checks);
        if (answer.WhileThere.Count > 0)
        {
            phone.Head("While you are there");
            foreach (WhileThere advice in answer.WhileThere)
            {
                phone.Line($"{advice.Advice} ({advice.Figure})", "- ", 2);
            }
        }

        phone.Head("Cautions");
        foreach (string caution in answer.Cautions)
        {
            phone.Line(caution, "! ", 2);
        }
    }

    private static string Understood(Answer answer)
    {
        var call = answer.Call;
        string age = call.AgeYears is { } years ? F($"{years:0.#} years ({call.AgeBasis})") : "age unknown";
        string? model = call.ModelNumber ?? (call.ModelFamily is { } family ? $"family {family}" : null);
        string? type = call.ApplianceType == Call.Unknown ? null : call.ApplianceType;
        string what = (type, model) switch
        {
            (null, null) => "appliance unknown",
            (_, null) => $"{type}, model unknown",
            _ => string.Join(' ', new[] { call.Brand, type, model }.OfType<string>()),
        };
        return $"{what}, {age}, {PageText.Complaint(call.ComplaintKind)}{(call.ErrorCode is { } code ? $", code {code}" : "")}";
    }

    private static void Earlier(NarrowText phone, IReadOnlyList<EarlierVisit> visits)
    {
        foreach (EarlierVisit visit in visits.Take(3))
        {
            phone.Line(F($"{visit.DaysAgo} days earlier: {(visit.Need is { } need ? Name(need) : "part not recorded")} for {visit.ComplaintKind.Replace('_', ' ')}"), "< ", 2);
        }

        if (visits.Count > 3)
        {
            phone.Line(F($"and {visits.Count - 3} earlier visits"), "< ", 2);
        }
    }

    private static void Needs(NarrowText phone, Answer answer, string currency)
    {
        if (answer.Needs.Count == 0)
        {
            return;
        }

        phone.Head("What it will need");
        foreach (LikelyNeed need in answer.Needs)
        {
            phone.Line(F($"{Name(need.Need)}, {need.Word} ({need.SimilarJobs:N0} of {answer.Evidence.Jobs:N0} jobs){(need.Bring ? ", BRING" : "")}"), F($"{need.Odds * 100,3:0} % "), 6);
            foreach (AnswerPart part in need.Parts.Take(2))
            {
                phone.Line(PartLine(part, currency), "      ", 8);
            }

            foreach (Companion companion in need.Companions.Take(2))
            {
                phone.Line(F($"often with {Name(companion.With)}: {companion.JobsBoth} of {companion.JobsComponent} jobs"), "      ", 8);
            }
        }

        if (answer.OtherOdds >= 0.005)
        {
            phone.Line("anything else", F($"{answer.OtherOdds * 100,3:0} % "), 6);
        }
    }

    private static string PartLine(AnswerPart part, string currency)
    {
        string basis = part.Basis switch
        {
            "this model" => F($"{part.JobsOnModel} jobs on this model"),
            "family jobs" => F($"{part.Part.TimesSeen} jobs on the family"),
            _ => "listed, not fitted here yet",
        };
        string price = part.Part.Price is { } p ? ", " + MoneyFormat.Text(p, currency) : "";
        string vans = part.Vans.Count == 0 ? "on no van" : "van " + string.Join(", ", part.Vans.Select(v => F($"{v.Van} has {v.OnHand}")));
        return F($"{part.Part.Quantity} x {part.Part.PartNumber}{(part.Part.Available ? "" : " (no longer made)")}{price}; {basis}; {vans}");
    }

    private static void Carry(NarrowText phone, Answer answer)
    {
        if (answer.Needs.Count == 0)
        {
            return;
        }

        phone.Head("Carry");
        foreach (CarryList list in answer.Carry80.Needs.SequenceEqual(answer.Carry95.Needs) ? (CarryList[])[answer.Carry80] : [answer.Carry80, answer.Carry95])
        {
            // The call's own figure, so that it can't contradict the odds above it.
            string[] parts = [.. list.Needs.Where(n => n != Need.NoPart).Select(Name)];
            phone.Line(
                parts.Length == 0 ? "only your tools" : string.Join(", ", parts),
                F($"{Math.Min(99, Math.Round(list.Covers * 100)):0} in 100: "), 11);
        }

        LikelyNeed? first = answer.Needs.FirstOrDefault(n => n.BringFrom is not null);
        if (first is not null)
        {
            phone.Line(F($"Worth bringing when the chance is {first.BringFrom * 100:0} % or more. Below that, carrying it costs more than the second visit it saves."));
        }
    }

    private static void Checks(NarrowText phone, CallCheckPlan? plan)
    {
        if (plan is null)
        {
            return;
        }

        phone.Head("Check in this order");
        foreach (CheckStep step in plan.Steps)
        {
            if (step.Opening is { } opening)
            {
                phone.Line(F($"open: {opening.Opening} ({opening.Minutes:0} min)"), "    ", 4);
            }

            phone.Line(F($"{step.Check.What} ({step.Check.Minutes:0} min{(step.Odds > 0 ? F($", {step.Odds * 100:0} %") : "")})"), F($"{step.Place,2}. "), 4);
            phone.Line(step.Check.Good, "    good: ", 6);
            phone.Line(step.Check.Bad, "    bad: ", 6);
        }

        phone.Line(F($"About {plan.ExpectedMinutes:0} min on average in this order; quickest checks first {plan.CheapestFirstMinutes:0}, likeliest first {plan.LikeliestFirstMinutes:0}. Edit checks.csv to use your own times."));
    }

    private static string Name(string need) => need switch
    {
        Need.NoPart => "no part needed",
        Need.OtherPart => "another part",
        _ => need.Replace('_', ' '),
    };

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
