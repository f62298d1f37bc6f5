namespace PartsSignal.Analysis.Prediction;

/// <summary>Odds that were given for one call, and what it then needed.</summary>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="ApplianceType">Type of the appliance.</param>
/// <param name="ComplaintKind">Kind of the complaint.</param>
/// <param name="Odds">The odds given, one per need.</param>
/// <param name="Truth">Place of the need in the odds; -1: the predictor had never seen it, which counts as a miss.</param>
public sealed record Forecast(string JobId, DateOnly OpenedOn, string ApplianceType, string ComplaintKind, double[] Odds, int Truth)
{
    /// <summary>Smallest probability a logarithm is taken of.</summary>
    public const double Floor = 1e-6;

    /// <summary>Names of the needs by place; empty where only places matter.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];

    /// <summary>What the call needed, by name, or null if not named.</summary>
    public string? Need { get; init; }

    /// <summary>Probability given to a need by name; 0 for one it does not know.</summary>
    public double Of(string need)
    {
        for (int k = 0; k < Needs.Count; k++)
        {
            if (Needs[k] == need)
            {
                return Odds[k];
            }
        }

        return 0;
    }

    /// <summary>-log of a probability in nats, with the floor at 1e-6.</summary>
    public static double Loss(double probability) => -Math.Log(Math.Max(probability, Floor));

    /// <summary>Probability given to what happened; 0 where the predictor did not know that need.</summary>
    public double OfTruth => Truth < 0 ? 0 : Odds[Truth];

    /// <summary>-log of it, in nats, with the floor at 1e-6.</summary>
    public double LogLoss => Loss(OfTruth);

    /// <summary>Sum over all needs of the squared error, 0 to 2; an unknown need adds its full 1.</summary>
    public double Brier
    {
        get
        {
            double sum = Truth < 0 ? 1 : 0;
            for (int k = 0; k < Odds.Length; k++)
            {
                double error = Odds[k] - (k == Truth ? 1 : 0);
                sum += error * error;
            }

            return sum;
        }
    }

    /// <summary>Place of the truth among the odds, from 1; equal odds rank in list order, so ties never flatter. Null: not among them.</summary>
    public int? Rank => Truth < 0 ? null : 1 + Before((p, k) => p > Odds[Truth] || (p == Odds[Truth] && k < Truth));

    /// <summary>The same where equal odds share the better place. Null: not among them.</summary>
    public int? SharedRank => Truth < 0 ? null : 1 + Before((p, _) => p > Odds[Truth]);

    /// <summary>The likeliest need; the first of equals. -1: there are none.</summary>
    public int Top
    {
        get
        {
            int best = Odds.Length == 0 ? -1 : 0;
            for (int k = 1; k < Odds.Length; k++)
            {
                best = Odds[k] > Odds[best] ? k : best;
            }

            return best;
        }
    }

    /// <summary>Probability of the likeliest need.</summary>
    public double Confidence => Top < 0 ? 0 : Odds[Top];

    private int Before(Func<double, int, bool> ahead)
    {
        int before = 0;
        for (int k = 0; k < Odds.Length; k++)
        {
            before += ahead(Odds[k], k) ? 1 : 0;
        }

        return before;
    }
}

/// <summary>Turns a call into odds over what it may need. A pure function: the same call gives the same odds to the last digit.</summary>
public interface IPredictor
{
    /// <summary>The needs it knows, in ordinal order.</summary>
    IReadOnlyList<string> Needs { get; }

    /// <summary>One probability per need, each 0 to 1, summing to 1.</summary>
    double[] Odds(Call call);
}

/// <summary>Lets a predictor answer calls whose truth is known.</summary>
internal static class Forecasting
{
    /// <summary>The forecast for one call.</summary>
    public static Forecast Run(IPredictor predictor, ClosedCall call) => Run(predictor, NeedList.Places(predictor.Needs), call);

    /// <summary>The forecasts for many calls, in their order.</summary>
    public static IReadOnlyList<Forecast> Run(IPredictor predictor, IReadOnlyList<ClosedCall> calls)
    {
        Dictionary<string, int> places = NeedList.Places(predictor.Needs);
        return [.. calls.Select(c => Run(predictor, places, c))];
    }

    private static Forecast Run(IPredictor predictor, Dictionary<string, int> places, ClosedCall call) =>
        new(call.JobId, call.OpenedOn, call.Call.ApplianceType, call.Call.ComplaintKind, predictor.Odds(call.Call), places.GetValueOrDefault(call.Need, -1))
        {
            Needs = predictor.Needs,
            Need = call.Need,
        };
}
