namespace PartsSignal.Analysis.Prediction;

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
