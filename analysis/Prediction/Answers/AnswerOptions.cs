namespace PartsSignal.Analysis.Prediction.Answers;

/// <summary>How an answer is cut and worded.</summary>
public sealed record AnswerOptions
{
    /// <summary>Fewest jobs at a level for it to be named as the evidence. Default 5.</summary>
    public int LeastJobs { get; init; } = 5;

    /// <summary>Needs less likely than this are left out of the list. Default 0.02.</summary>
    public double LeastOdds { get; init; } = 0.02;

    /// <summary>Most needs in the list. Default 8.</summary>
    public int MostNeeds { get; init; } = 8;

    /// <summary>What an avoidable second visit costs, in the shop's currency. Default 85.</summary>
    public decimal SecondVisitCost { get; init; } = 85m;

    /// <summary>Handling of a part that was brought for nothing, in the shop's currency. Default 12.</summary>
    public decimal HandlingCost { get; init; } = 12m;

    /// <summary>Share of its price lost on a part that was brought for nothing and cannot be returned. Default 0.15.</summary>
    public double LostShare { get; init; } = 0.15;

    /// <summary>Share lost on one that can. Default 0.02.</summary>
    public double ReturnShare { get; init; } = 0.02;

    /// <summary>A companion is named from this share of jobs. Default 0.15.</summary>
    public double LeastCompanionShare { get; init; } = 0.15;

    /// <summary>A companion is named from this lift on, and only where the lower end of its interval is above 1. Default 1.5.</summary>
    public double LeastLift { get; init; } = 1.5;

    /// <summary>A part is worth a look while there when its chance within a year reaches this. Default 0.08.</summary>
    public double LeastYearRisk { get; init; } = 0.08;

    /// <summary>Age from which rubber fill hoses are looked at, years. Default 5.</summary>
    public double HoseAge { get; init; } = 5;

    /// <summary>Word beside a figure: usual from 40 %, possible from 10 %, rare below.</summary>
    public static string Word(double odds) => odds >= 0.40 ? "usual" : odds >= 0.10 ? "possible" : "rare";
}
