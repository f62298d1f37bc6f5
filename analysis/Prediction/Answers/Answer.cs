using System.Globalization;
using PartsSignal.Analysis.CheckOrder;

namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>The technician's answer to one call.</summary>
public sealed record Answer
{
    /// <summary>The call as understood.</summary>
    public required Call Call { get; init; }

    /// <summary>Where the evidence lies, and how much of it there is.</summary>
    public required AnswerEvidence Evidence { get; init; }

    /// <summary>What it may need, likeliest first; empty: too few jobs to say.</summary>
    public required IReadOnlyList<LikelyNeed> Needs { get; init; }

    /// <summary>Chance left over for everything not listed.</summary>
    public required double OtherOdds { get; init; }

    /// <summary>The short set: such sets cover about 80 calls in 100.</summary>
    public required CarryList Carry80 { get; init; }

    /// <summary>The long set: such sets cover about 95 calls in 100.</summary>
    public required CarryList Carry95 { get; init; }

    /// <summary>The checks in order, or null if the table has none for such a call.</summary>
    public required CallCheckPlan? Checks { get; init; }

    /// <summary>What to look at while there.</summary>
    public required IReadOnlyList<WhileThere> WhileThere { get; init; }

    /// <summary>Cautions, the general ones first.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What the answer could not rest on, for example an unknown family.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}

/// <summary>Where an answer's evidence lies.</summary>
/// <param name="Source">model, family, type, complaint (on any type, where none is told), unknown type (jobs that tell none either), all jobs, or none.</param>
/// <param name="Level">The level of counting behind the source.</param>
/// <param name="Jobs">Similar closed jobs there.</param>
/// <param name="Levels">Jobs at every level, widest first.</param>
public sealed record AnswerEvidence(string Source, string Level, int Jobs, IReadOnlyList<LevelCount> Levels)
{
    /// <summary>What the answer rests on, as a sentence.</summary>
    public string Sentence() => Source switch
    {
        "none" => "No similar jobs to rest on.",
        "unknown type" => string.Create(CultureInfo.InvariantCulture, $"From {Jobs:N0} jobs that do not tell the type of appliance either."),
        "complaint" => string.Create(CultureInfo.InvariantCulture, $"From {Jobs:N0} jobs with this complaint on any appliance."),
        "all jobs" => string.Create(CultureInfo.InvariantCulture, $"Too few jobs are like this one: the figures are from all jobs of the shop, {Jobs:N0}."),
        _ => string.Create(CultureInfo.InvariantCulture, $"From {Jobs:N0} similar jobs on this {Source}."),
    };
}

/// <summary>One thing a call may need.</summary>
/// <param name="Need">Component, <c>none</c> or <c>other_part</c>.</param>
/// <param name="Odds">Its odds, 0 to 1.</param>
/// <param name="Word">usual, possible or rare; never shown without the figure.</param>
/// <param name="SimilarJobs">Of the similar jobs, those that needed it.</param>
/// <param name="Parts">Part numbers for that very model, best first; empty: none known.</param>
/// <param name="Companions">What is often fitted with it.</param>
/// <param name="BringFrom">Odds from which bringing it pays, or null if it is no part.</param>
/// <param name="Bring">True: bring it.</param>
public sealed record LikelyNeed(
    string Need, double Odds, string Word, int SimilarJobs, IReadOnlyList<AnswerPart> Parts, IReadOnlyList<Companion> Companions, double? BringFrom, bool Bring);

/// <summary>A part number for a need.</summary>
/// <param name="Part">The part.</param>
/// <param name="JobsOnModel">Jobs on this very model that used it.</param>
/// <param name="Basis">Why it is named: this model, family jobs, or list.</param>
/// <param name="Vans">Vans that hold it.</param>
public sealed record AnswerPart(FamilyPart Part, long JobsOnModel, string Basis, IReadOnlyList<VanPart> Vans);

/// <summary>A set to carry.</summary>
/// <param name="Promise">Share of all calls that such sets cover, for example 0.95.</param>
/// <param name="Needs">Needs in the set, likeliest first; empty: too few jobs to say.</param>
/// <param name="Covers">Chance that this call needs one of them: the sum of their odds, 0 to 1.</param>
public sealed record CarryList(double Promise, IReadOnlyList<string> Needs, double Covers);

/// <summary>Something to look at while there.</summary>
/// <param name="Component">The component.</param>
/// <param name="Advice">What to do.</param>
/// <param name="Figure">The figure behind it.</param>
public sealed record WhileThere(string Component, string Advice, string Figure);
