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
    private const int Rounds = 8;

    /// <summary>Trains on closed jobs. Spreads of an earlier model are taken over and kept where one is given.</summary>
    public static LogOddsModel Train(IReadOnlyList<ClosedCall> calls, LogOddsModel? earlier = null)
    {
        LogOddsShape shape = LogOddsShape.Of(calls);
        DesignRows rows = DesignRows.Encode(calls, shape);
        int needs = shape.Needs.Count;
        var weights = new double[shape.Space.Count * needs];
        double[] spreads = earlier is null ? StartSpreads() : [.. earlier.Spreads];
        CarryOver(earlier, shape, weights);
        int rounds = earlier is null ? Rounds : 1;
        for (int round = 0; round < rounds && weights.Length > 0; round++)
        {
            double[] precision = Precision(shape, spreads, needs);
            var objective = new LogOddsObjective(rows, needs, precision);
            double[] curvature = objective.Curvature(weights);
            bool last = round == rounds - 1;
            QuasiNewton.Minimise(objective.Evaluate, weights, Inverse(curvature, precision), last ? 150 : 80, last ? 1e-7 : 1e-6);
            if (!last)
            {
                Learn(shape, spreads, weights, objective.Curvature(weights), precision);
            }
        }

        return new LogOddsModel(shape, weights, Background(rows, needs), spreads);
    }

    private static double[] StartSpreads()
    {
        var spreads = new double[Enum.GetValues<FeatureGroup>().Length];
        Array.Fill(spreads, Start);
        spreads[(int)FeatureGroup.Type] = Largest;
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
        for (int f = 0; f < shape.Space.Count; f++)
        {
            double spread = spreads[(int)shape.Space.Features[f].Group];
            Array.Fill(precision, 1 / (spread * spread), f * needs, needs);
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
        double[] squares = new double[spreads.Length], determined = new double[spreads.Length];
        for (int j = 0; j < weights.Length; j++)
        {
            int group = (int)shape.Space.Features[j / shape.Needs.Count].Group;
            squares[group] += weights[j] * weights[j];
            determined[group] += curvature[j] / (curvature[j] + precision[j]);
        }

        for (int g = 0; g < spreads.Length; g++)
        {
            if (g != (int)FeatureGroup.Type && determined[g] > 0)
            {
                spreads[g] = Math.Clamp(Math.Sqrt(squares[g] / determined[g]), Smallest, Largest);
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
