namespace PartsSignal.Analysis.Statistics.Linkage;

/// <summary>
/// Match weights of record pairs (Fellegi &amp; Sunter 1969). Fields must be compared so that they say new things: two
/// that depend on each other belong in one comparison.
/// </summary>
/// <param name="M">Chance per field that a true match agrees.</param>
/// <param name="U">Chance per field that a chance pair agrees.</param>
/// <param name="Prior">Share of true matches among the pairs.</param>
public sealed record FellegiSunter(IReadOnlyList<double> M, IReadOnlyList<double> U, double Prior)
{
    private const double Floor = 0.001;

    /// <summary>Weight of each field in bits: log2(m/u) where it agrees, log2((1-m)/(1-u)) where not.</summary>
    public IReadOnlyList<double> FieldWeights(IReadOnlyList<bool> agrees) =>
        [.. agrees.Select((a, i) => a ? Math.Log2(M[i] / U[i]) : Math.Log2((1 - M[i]) / (1 - U[i])))];

    /// <summary>Sum of the fields' weights.</summary>
    public double Weight(IReadOnlyList<bool> agrees) => FieldWeights(agrees).Sum();

    /// <summary>Chance that the pair is a match.</summary>
    public double Posterior(IReadOnlyList<bool> agrees)
    {
        double factor = Math.Pow(2, Weight(agrees)) * Prior;
        return factor / (factor + 1 - Prior);
    }

    /// <summary>
    /// Estimates all three by expectation-maximisation from counts of agreement patterns (Winkler 1988); m and u stay
    /// within 0.001 to 0.999, where small data would drive them to the boundary.
    /// </summary>
    /// <param name="patterns">Patterns with their counts.</param>
    /// <param name="tolerance">Largest change of a parameter at the end.</param>
    /// <param name="mostSteps">Steps allowed.</param>
    public FellegiSunter Learn(IReadOnlyList<(IReadOnlyList<bool> Agrees, double Count)> patterns, double tolerance = 1e-12, int mostSteps = 20000)
    {
        FellegiSunter at = this;
        for (int step = 0; step < mostSteps; step++)
        {
            FellegiSunter next = at.Step(patterns);
            double change = Math.Abs(next.Prior - at.Prior);
            for (int k = 0; k < M.Count; k++)
            {
                change = Math.Max(change, Math.Max(Math.Abs(next.M[k] - at.M[k]), Math.Abs(next.U[k] - at.U[k])));
            }

            at = next;
            if (change < tolerance)
            {
                break;
            }
        }

        return at;
    }

    private FellegiSunter Step(IReadOnlyList<(IReadOnlyList<bool> Agrees, double Count)> patterns)
    {
        double all = 0, matches = 0;
        double[] agreeing = new double[M.Count], chance = new double[M.Count];
        foreach ((IReadOnlyList<bool> agrees, double count) in patterns)
        {
            double share = Posterior(agrees) * count;
            all += count;
            matches += share;
            for (int k = 0; k < M.Count; k++)
            {
                agreeing[k] += agrees[k] ? share : 0;
                chance[k] += agrees[k] ? count - share : 0;
            }
        }

        return new FellegiSunter(
            [.. agreeing.Select(a => Math.Clamp(a / matches, Floor, 1 - Floor))],
            [.. chance.Select(c => Math.Clamp(c / (all - matches), Floor, 1 - Floor))],
            matches / all);
    }
}
