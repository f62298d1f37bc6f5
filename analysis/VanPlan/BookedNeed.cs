using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A part a booked job may need.</summary>
/// <param name="Need">Component.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
/// <param name="Chance">0 to 1.</param>
public sealed record BookedPart(string Need, string PartNumber, int Quantity, double Chance);

/// <summary>A booked job with the odds of what it needs.</summary>
/// <param name="JobId">Its number.</param>
/// <param name="Van">Van that will serve it.</param>
/// <param name="NoPart">Chance that no part is needed, 0 to 1.</param>
/// <param name="Parts">Parts it may need, likeliest first. What is left of 1 needs something that has no number here.</param>
public sealed record BookedNeed(string JobId, string Van, double NoPart, IReadOnlyList<BookedPart> Parts)
{
    /// <summary>The needs of booked calls, each by the answer the technician would be given.</summary>
    public static IReadOnlyList<BookedNeed> From(IReadOnlyList<BookedCall> calls, ShippedModel model, LookupFacts facts, AnswerOptions options) =>
        [.. calls.Select(c => From(c, AnswerBuilder.Build(c.Call, model, facts, options)))];

    private static BookedNeed From(BookedCall call, Answer answer) => new(
        call.JobId,
        call.Van!,
        answer.Needs.Where(n => n.Need == Need.NoPart).Sum(n => n.Odds),
        [.. answer.Needs.Where(n => n.Parts.Count > 0 && n.Parts[0].Part.Available)
            .Select(n => new BookedPart(n.Need, n.Parts[0].Part.PartNumber, n.Parts[0].Part.Quantity, n.Odds))]);
}
