using PartsSignal.Analysis.Prediction;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Prediction.ModelFiles;
using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>What a plan knows of the jobs already booked.</summary>
/// <param name="Calls">The jobs.</param>
/// <param name="Needs">Their predicted needs; empty where they cannot be predicted.</param>
/// <param name="Note">In words, for example why nothing is said of them.</param>
public sealed record BookedJobs(IReadOnlyList<BookedCall> Calls, IReadOnlyList<BookedNeed> Needs, string Note)
{
    /// <summary>Jobs that wait for an ordered part. It is set aside for them, so they ask nothing of the van.</summary>
    public IReadOnlyList<BookedCall> Waiting { get; init; } = [];

    /// <summary>A call left open for longer than so many days is taken as forgotten in the log, not as still to come.</summary>
    public const int LongestWait = 30;

    /// <summary>Nothing is booked.</summary>
    public static BookedJobs None { get; } = new([], [], "no booked jobs");

    /// <summary>Predicts the needs of booked jobs.</summary>
    /// <param name="open">All open jobs of the log.</param>
    /// <param name="day">Last day the plan knows: later calls have no part in it, and a model that learned from later days knows too much and is not asked.</param>
    /// <param name="model">The predictor, or null if there is none.</param>
    /// <param name="facts">Parts by family; asked for only when there is something to predict.</param>
    /// <param name="options">How answers are cut.</param>
    public static BookedJobs Create(IReadOnlyList<BookedCall> open, DateOnly day, ShippedModel? model, Func<LookupFacts> facts, AnswerOptions options)
    {
        BookedCall[] waiting = [.. open.Where(c => IsOpen(c, day) && IsWaiting(c, day))];
        return ToCome(NotVisited(open, day), day, model, facts, options) with { Waiting = waiting };
    }

    /// <summary>Those that wait for their first visit, and not for an ordered part.</summary>
    /// <param name="open">All open jobs of the log.</param>
    /// <param name="day">Last day that is known.</param>
    public static IReadOnlyList<BookedCall> NotVisited(IReadOnlyList<BookedCall> open, DateOnly day) =>
        [.. open.Where(c => IsOpen(c, day) && !IsWaiting(c, day) && !c.IsVisited)];

    private static BookedJobs ToCome(IReadOnlyList<BookedCall> calls, DateOnly day, ShippedModel? model, Func<LookupFacts> facts, AnswerOptions options)
    {
        if (calls.Count == 0)
        {
            return None;
        }

        if (model is null || model.Needs.Count == 0)
        {
            return new BookedJobs(calls, [], $"{calls.Count} booked jobs left out: no predictor tells what they need");
        }

        if (model.LearnedTo > day)
        {
            return new BookedJobs(calls, [], $"{calls.Count} booked jobs left out: the predictor has learned from days after the plan's");
        }

        return new BookedJobs(calls, BookedNeed.From(calls, model, facts(), options), $"In the whole shop, {(calls.Count == 1 ? "1 call is" : $"{calls.Count} calls are")} not visited yet: see the list 'booked'");
    }

    /// <summary>Those of some vans, or null for all of them.</summary>
    public BookedJobs Create(IReadOnlySet<string>? vans)
    {
        if (vans is null)
        {
            return this;
        }

        BookedCall[] calls = [.. Calls.Where(c => c.Van is not null && vans.Contains(c.Van))];
        HashSet<string> jobs = [.. calls.Select(c => c.JobId)];
        return this with
        {
            Calls = calls,
            Needs = [.. Needs.Where(n => jobs.Contains(n.JobId))],
            Waiting = [.. Waiting.Where(c => vans.Contains(c.Van!))],
        };
    }

    private static bool IsOpen(BookedCall call, DateOnly day) =>
        call.Van is not null && call.OpenedOn <= day && call.OpenedOn > day.AddDays(-LongestWait);

    private static bool IsWaiting(BookedCall call, DateOnly day) => call.Outcome == Outcome.PartOrdered || call.PartOrderedOn <= day;
}

/// <summary>A part a booked job may need.</summary>
/// <param name="Need">Component.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Quantity">Pieces, 1 or more.</param>
/// <param name="Chance">0 to 1.</param>
/// <param name="Bring">True: at these odds bringing it costs less than the second visit it may save.</param>
public sealed record BookedPart(string Need, string PartNumber, int Quantity, double Chance, bool Bring = false);

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
            .Select(n => new BookedPart(n.Need, n.Parts[0].Part.PartNumber, n.Parts[0].Part.Quantity, n.Odds, n.Bring))]);
}
