namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>A way to learn a predictor from closed jobs.</summary>
public interface IContender
{
    /// <summary>Short name in tables and files.</summary>
    string Name { get; }

    /// <summary>What it is, in a sentence.</summary>
    string What { get; }

    /// <summary>Place among the contenders by simplicity, from 0; of two that cannot be told apart the simpler ships.</summary>
    int Complexity { get; }

    /// <summary>Why it cannot take part on this machine, for people; null: it can.</summary>
    string? Missing => null;

    /// <summary>Learns from jobs. The same jobs give the same predictor.</summary>
    /// <param name="calls">Closed jobs.</param>
    /// <param name="earlier">What the same contender learned at an earlier cut-off, to start from; null: start afresh.</param>
    IPredictor Train(IReadOnlyList<ClosedCall> calls, IPredictor? earlier = null);
}
