namespace PartsSignal.Analysis.Prediction.LogOdds;

/// <summary>
/// Fits the table of log odds: multinomial logistic regression with normal priors whose spreads are learned per group of
/// facts by the evidence of the data (MacKay 1992): spread^2 = sum w^2 / gamma, with gamma the number of weights the data
/// determine, sum of h / (h + 1 / spread^2).
/// </summary>
internal static class LogOddsTrainer
{
    private const double Start = 0.5;
    private const double Smallest = 0.02;
    private const double Largest = 4;
    private const int Rounds = 5;

    // A need's own spread leans on its group's with the weight of so many determined weights.
    private const double Lean = 5;

    /// <summary>Trains on closed jobs. Spreads of an earlier model are taken over and kept where one is given.</summary>
    public static LogOddsModel Train(IReadOnlyList<ClosedCall> calls, LogOddsModel? earlier = null)
    {
        LogOddsShape shape = LogOddsShape.From(calls, earlier?.Shape.Kinds);
        CodedCalls coded = earlier?.Coded ?? new CodedCalls(shape.Kinds);
        (DesignRows rows, WeightLayout layout) = DesignRows.Encode(calls, shape, coded);
        int needs = shape.Needs.Count;
        double[] spreads = Spreads(earlier, shape.Needs);
        double[] weights = CarryOver(earlier, shape, layout.Full);
        int[] groups = [.. layout.Full.Select(full => (int)shape.Space.Features[full / needs].Group * needs + full % needs)];
        var objective = new LogOddsObjective(rows, needs, weights.Length);
        int rounds = earlier is null ? Rounds : 1, finish = earlier is null ? 30 : 8;
        for (int round = 0; round < rounds && weights.Length > 0; round++)
        {
            objective.Precision = [.. groups.Select(g => 1 / (spreads[g] * spreads[g]))];
            bool last = round == rounds - 1;
            double[] inverse = [.. objective.Curvature(weights).Zip(objective.Precision, (c, p) => 1 / (c + p))];
            QuasiNewton.Minimise(objective.Evaluate, weights, inverse, last ? finish : 15, last ? 2e-6 : 5e-5);
            if (!last)
            {
                Learn(groups, needs, spreads, weights, objective.Curvature(weights), objective.Precision);
            }
        }

        double[] table = layout.Spread(weights, shape.Space.Count * needs);
        return new LogOddsModel(shape, table, Background(calls, shape), spreads) { Coded = coded };
    }

    private static double[] StartSpreads(int needs)
    {
        var spreads = new double[LogOddsModel.Groups * needs];
        Array.Fill(spreads, Start);
        Array.Fill(spreads, Largest, (int)FeatureGroup.Type * needs, needs);
        return spreads;
    }

    private static double[] Spreads(LogOddsModel? earlier, IReadOnlyList<string> needs)
    {
        double[] spreads = StartSpreads(needs.Count);
        for (int k = 0; earlier is not null && k < needs.Count; k++)
        {
            int before = earlier.Shape.Places.GetValueOrDefault(needs[k], -1);
            for (int g = 0; before >= 0 && g < LogOddsModel.Groups; g++)
            {
                spreads[g * needs.Count + k] = earlier.Spreads[g * earlier.Needs.Count + before];
            }
        }

        return spreads;
    }

    private static double[] CarryOver(LogOddsModel? earlier, LogOddsShape shape, int[] full)
    {
        var weights = new double[full.Length];
        int needs = shape.Needs.Count;
        for (int j = 0; earlier is not null && j < weights.Length; j++)
        {
            string key = shape.Space.Features[full[j] / needs].Key;
            int before = earlier.Shape.Space.Find(key);
            int place = LogOddsShape.IsShared(key) ? 0 : earlier.Shape.Places.GetValueOrDefault(shape.Needs[full[j] % needs], -1);
            weights[j] = before < 0 || place < 0 ? 0 : earlier.WeightsOf(before)[place];
        }

        return weights;
    }

    private static void Learn(int[] groups, int needs, double[] spreads, double[] weights, double[] curvature, double[] precision)
    {
        double[] squares = new double[spreads.Length], determined = new double[spreads.Length];
        for (int j = 0; j < weights.Length; j++)
        {
            squares[groups[j]] += weights[j] * weights[j];
            determined[groups[j]] += curvature[j] / (curvature[j] + precision[j]);
        }

        for (int g = 0; g < LogOddsModel.Groups; g++)
        {
            double all = determined.AsSpan(g * needs, needs).ToArray().Sum();
            if (g == (int)FeatureGroup.Type || all <= 0)
            {
                continue;
            }

            double common = squares.AsSpan(g * needs, needs).ToArray().Sum() / all;
            for (int p = g * needs; p < (g + 1) * needs; p++)
            {
                spreads[p] = Math.Clamp(Math.Sqrt((squares[p] + Lean * common) / (determined[p] + Lean)), Smallest, Largest);
            }
        }
    }

    private static double[] Background(IReadOnlyList<ClosedCall> calls, LogOddsShape shape)
    {
        var shares = new double[shape.Needs.Count];
        foreach (ClosedCall call in calls)
        {
            shares[shape.Places[call.Need]] += 1.0 / calls.Count;
        }

        return shares;
    }
}
