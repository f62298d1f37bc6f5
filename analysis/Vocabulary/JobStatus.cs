namespace PartsSignal.Analysis.Vocabulary;

/// <summary>What a log's status column says of a job.</summary>
public static class JobStatus
{
    public const string Closed = "closed";
    public const string Open = "open";

    /// <summary>Open until a part comes.</summary>
    public const string WaitingForPart = "waiting_for_part";

    /// <summary>Finished without a repair, at the customer's or the shop's wish.</summary>
    public const string Canceled = "canceled";
}
