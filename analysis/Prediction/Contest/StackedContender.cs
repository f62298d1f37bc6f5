namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>A stack of other contenders whose weights are already found.</summary>
/// <param name="members">The contenders.</param>
/// <param name="weights">Weight of each, found on months before those it is judged on.</param>
internal sealed class StackedContender(IReadOnlyList<IContender> members, IReadOnlyList<double> weights) : IContender
{
    /// <summary>Its name.</summary>
    public const string ContenderName = "stack";

    /// <inheritdoc/>
    public string Name => ContenderName;

    /// <inheritdoc/>
    public string What => "Log odds of the others added up, weights found on the calibration months: " + string.Join(", ", members.Select((m, i) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{m.Name} {weights[i]:0.00}"))) + ".";

    /// <inheritdoc/>
    public int Complexity => 6;

    /// <inheritdoc/>
    public IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null)
    {
        var before = earlier as StackedPredictor;
        return new StackedPredictor([.. members.Select((m, i) => m.Train(calls, before?.Members[i]))], weights);
    }
}
