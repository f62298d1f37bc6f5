namespace PartsSignal.Analysis.VanPlan.Replay;

/// <summary>What happens to the parts aboard when a job misses one.</summary>
internal enum ConsumeRule
{
    /// <summary>
    /// What is aboard is set aside for the job's second visit, what is missing waits for the next delivery; both are
    /// reordered at the next restocking. The default: it is what a shop does.
    /// </summary>
    TakeWhatIsThere,

    /// <summary>The job takes nothing: all its parts are ordered for it, and the van keeps what it has.</summary>
    AllOrNothing,
}
