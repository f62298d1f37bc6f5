using PartsSignal.Analysis.PartPrediction.Calls;

namespace PartsSignal.Analysis.PartPrediction.LogOdds;

/// <summary>
/// Fits the table of log odds: multinomial logistic regression with normal priors whose spreads are learned per group of
/// facts by the evidence of the data (MacKay 1992): spread^2 = sum w^2 / gamma, with gamma the number of weights the data
/// determine, sum of h / (h + 1 / spread^2).
/// </summary>
public static class LogOddsTrainer
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
        LogOddsShape shape = LogOddsShape.Of(calls, earlier?.Shape.Kinds);
        DesignRows rows = DesignRows.Encode(calls, shape);
        int needs = shape.Needs.Count;
        var weights = new double[shape.Space.Count * needs];
        double[] spreads = Spreads(earlier, shape.Needs);
        CarryOver(earlier, shape, weights);
        int rounds = earlier is null ? Rounds : 1, finish = earlier is null ? 30 : 8;
        for (int round = 0; round < rounds && weights.Length > 0; round++)
        {
            double[] precision = Precision(shape, spreads, needs);
            var objective = new LogOddsObjective(rows, needs, precision);
            double[] curvature = objective.Curvature(weights);
            bool last = round == rounds - 1;
            QuasiNewton.Minimise(objective.Evaluate, weights, Inverse(curvature, precision), last ? finish : 15, last ? 2e-6 : 5e-5);
            if (!last)
            {
                Learn(shape, spreads, weights, objective.Curvature(weights), precision);
            }
        }

        return new LogOddsModel(shape, weights, Background(rows, needs), spreads);
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

    private static void CarryOver(LogOddsModel? earlier, LogOddsShape shape, double[] weights)
    {
        for (int f = 0; earlier is not null && f < shape.Space.Count; f++)
        {
            int before = earlier.Shape.Space.Find(shape.Space.Features[f].Key);
            bool shared = shape.Space.Features[f].Key.EndsWith("/any", StringComparison.Ordinal);
            for (int k = 0; before >= 0 && k < shape.Needs.Count; k++)
            {
                int place = shared ? k : earlier.Shape.Places.GetValueOrDefault(shape.Needs[k], -1);
                weights[f * shape.Needs.Count + k] = place < 0 || place >= earlier.Needs.Count ? 0 : earlier.WeightsOf(before)[place];
            }
        }
    }

    private static double[] Precision(LogOddsShape shape, double[] spreads, int needs)
    {
        var precision = new double[shape.Space.Count * needs];
        for (int j = 0; j < precision.Length; j++)
        {
            double spread = spreads[(int)shape.Space.Features[j / needs].Group * needs + j % needs];
            precision[j] = 1 / (spread * spread);
        }

        return precision;
    }

    private static double[] Inverse(double[] curvature, double[] precision)
    {
        var inverse = new double[curvature.Length];
        for (int j = 0; j < inverse.Length; j++)
        {
            inverse[j] = 1 / (curvature[j] + precision[j]);
        }

        return inverse;
    }

    private static void Learn(LogOddsShape shape, double[] spreads, double[] weights, double[] curvature, double[] precision)
    {
        int needs = shape.Needs.Count;
        double[] squares = new double[spreads.Length], determined = new double[spreads.Length];
        for (int j = 0; j < weights.Length; j++)
        {
            int place = (int)shape.Space.Features[j / needs].Group * needs + j % needs;
            squares[place] += weights[j] * weights[j];
            determined[place] += curvature[j] / (curvature[j] + precision[j]);
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

    private static double[] Background(DesignRows rows, int needs)
    {
        var shares = new double[needs];
        foreach (int truth in rows.Truth)
        {
            shares[truth] += 1.0 / rows.Count;
        }

        return shares;
    }
}
