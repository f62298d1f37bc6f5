using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Reports.Phone;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>Questions such as an office asks: with and without a model, typed well and badly.</summary>
internal static class ShopQuestions
{
    private static readonly string[] Typed =
    [
        "wont fill, no water", "WATER ON FLOOR", "leeking from door", "not draning", "no heat", "error E20", "f5 on display", "noisey when spinning",
        "customer says it smells burnt", "nothing happens", "not cooling", "ice maker", "doesn't spin", "trips breaker", "grinding", "xyzzy", "dore wont close",
    ];

    /// <summary>A question about a model of the shop, or about no model.</summary>
    public static CallQuestion Question(Random random, IReadOnlyList<LookupModel> models, IReadOnlyList<LookupKind> kinds)
    {
        LookupModel model = models[random.Next(models.Count)];
        bool known = random.Next(6) > 0;
        return new CallQuestion
        {
            Model = known ? random.Next(5) == 0 ? model.Family : model.Number : null,
            ApplianceType = known ? null : model.Type,
            Complaint = random.Next(2) == 0 ? kinds[random.Next(kinds.Count)].Kind : Typed[random.Next(Typed.Length)],
            Age = random.Next(3) == 0 ? null : Math.Round(random.NextDouble() * 18, 1),
            Code = random.Next(8) == 0 ? "E20" : null,
            Customer = random.Next(6) == 0 ? "contract" : "household",
        };
    }

    /// <summary>Visits before the call, or none.</summary>
    public static IReadOnlyList<EarlierVisit> Earlier(Random random, ShippedModel model) => random.Next(3) > 0
        ? []
        : [new EarlierVisit(1 + random.Next(500), random.Next(4) == 0 ? null : model.Needs[random.Next(model.Needs.Count)], "no_fill")];
}
