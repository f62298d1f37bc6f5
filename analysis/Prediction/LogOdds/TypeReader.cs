namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Odds of the type of appliance where nobody told it, from the complaint and the shop's mix. The answer to such a call
/// is the sum over types of the type's odds times the answer for that type: P(need) = sum of P(type) P(need | type).
/// </summary>
internal sealed class TypeReader
{
    // Jobs without a type whose own record counts as much as the sum over types.
    private const double LeanJobs = 200;

    /// <summary>Types less likely than this are left out of the sum.</summary>
    internal const double LeastOdds = 0.001;

    /// <summary>Puts a reader together.</summary>
    /// <param name="types">Odds of the types; its needs are the types.</param>
    /// <param name="untyped">Jobs learned from that tell no type: the predictor knows such calls by themselves.</param>
    public TypeReader(LogOddsModel types, int untyped) => (Types, Untyped) = (types, untyped);

    /// <summary>Odds of the types.</summary>
    public LogOddsModel Types { get; }

    /// <summary>Jobs learned from that tell no type.</summary>
    public int Untyped { get; }

    /// <summary>Learns from closed jobs; null where fewer than two types are told apart.</summary>
    /// <param name="calls">The jobs.</param>
    /// <param name="earlier">What it learned at an earlier cut-off, to start from, or null to start afresh.</param>
    public static TypeReader? Learn(IReadOnlyList<ClosedCall> calls, TypeReader? earlier = null)
    {
        ClosedCall[] typed = [.. calls.Where(c => c.Call.ApplianceType != Call.Unknown).Select(c => c with { Need = c.Call.ApplianceType, Call = Blind(c.Call) })];
        return typed.Select(c => c.Need).Distinct(StringComparer.Ordinal).Count() < 2
            ? null
            : new TypeReader(LogOddsTrainer.Train(typed, earlier?.Types), calls.Count - typed.Length);
    }

    /// <summary>True for a call whose type has to be read from its complaint.</summary>
    public static bool Concerns(Call call) => call.ApplianceType == Call.Unknown && call.ModelFamily is null;

    /// <summary>Types a call may be about with their odds, likeliest first.</summary>
    public IReadOnlyList<(string Type, double Odds)> Of(Call call)
    {
        double[] odds = Types.Odds(Blind(call));
        return [.. Enumerable.Range(0, odds.Length).Select(t => (Types.Needs[t], odds[t])).OrderByDescending(t => t.Item2)];
    }

    /// <summary>The predictor, its answers summed over types where the type is not known; itself where there is no reader.</summary>
    public static IPredictor Over(IPredictor predictor, TypeReader? reader) => reader is null ? predictor : new OverTypes(predictor, reader);

    /// <summary>What a call tells besides the appliance: age and earlier visits belong to an appliance that is known.</summary>
    internal static Call Blind(Call call) => new()
    {
        ComplaintText = call.ComplaintText,
        ComplaintKind = call.ComplaintKind,
        ErrorCode = call.ErrorCode,
        CustomerKind = call.CustomerKind,
        Brand = call.Brand,
        Month = call.Month,
    };

    /// <summary>Odds of a call without a type.</summary>
    /// <param name="own">Odds for the call as it stands.</param>
    /// <param name="untyped">Jobs learned from that tell no type: the more, the more the odds for the call as it stands count.</param>
    /// <param name="types">Odds of each likely type, and the odds for the call if it is of that type.</param>
    internal static double[] Sum(double[] own, double untyped, IEnumerable<(double Odds, double[] Given)> types)
    {
        double direct = untyped / (untyped + LeanJobs);
        var sum = new double[own.Length];
        double told = 0;
        foreach ((double odds, double[] given) in types)
        {
            told += odds;
            for (int k = 0; k < sum.Length; k++)
            {
                sum[k] += odds * given[k];
            }
        }

        for (int k = 0; k < sum.Length; k++)
        {
            sum[k] = direct * own[k] + (1 - direct) * sum[k] / told;
        }

        return sum;
    }

    private sealed class OverTypes(IPredictor predictor, TypeReader reader) : IPredictor
    {
        public IReadOnlyList<string> Needs => predictor.Needs;

        public double[] Odds(Call call)
        {
            double[] own = predictor.Odds(call);
            if (!Concerns(call))
            {
                return own;
            }

            return Sum(own, reader.Untyped, reader.Of(call).Where(t => t.Odds >= LeastOdds).Select(t => (t.Odds, predictor.Odds(call with { ApplianceType = t.Type }))));
        }
    }
}
