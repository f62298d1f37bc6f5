namespace PartsSignal.Analysis.PartPrediction.Calibration;

/// <summary>
/// The best fitting values that never fall as the score rises, by pooling neighbours that break the order
/// (pool adjacent violators; Ayer et al. 1955; for calibration Zadrozny and Elkan 2002).
/// </summary>
public static class Isotonic
{
    /// <summary>Fitted value of each label, labels being in the order of rising score.</summary>
    /// <param name="labels">Labels or means, in order of the score.</param>
    public static double[] Fit(ReadOnlySpan<double> labels)
    {
        var means = new double[labels.Length];
        var sizes = new int[labels.Length];
        int blocks = 0;
        foreach (double label in labels)
        {
            (means[blocks], sizes[blocks]) = (label, 1);
            blocks++;
            while (blocks > 1 && means[blocks - 2] > means[blocks - 1])
            {
                int size = sizes[blocks - 2] + sizes[blocks - 1];
                means[blocks - 2] = (means[blocks - 2] * sizes[blocks - 2] + means[blocks - 1] * sizes[blocks - 1]) / size;
                sizes[blocks - 2] = size;
                blocks--;
            }
        }

        var fitted = new double[labels.Length];
        for (int b = 0, at = 0; b < blocks; at += sizes[b], b++)
        {
            Array.Fill(fitted, means[b], at, sizes[b]);
        }

        return fitted;
    }
}
