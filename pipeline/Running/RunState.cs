using PartsSignal.Analysis.Prediction.Contest;

namespace PartsSignal.Pipeline.Running;

/// <summary>What one step of a run leaves for a later one; each value is null until its step has run.</summary>
internal sealed class RunState
{
    /// <summary>Result of the load step.</summary>
    public LoadReport? Load { get; set; }

    /// <summary>Result of the learning step; its model predicts what booked jobs will need.</summary>
    public LearningResult? Learned { get; set; }
}
