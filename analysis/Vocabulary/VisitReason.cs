namespace PartsSignal.Analysis.Vocabulary;

/// <summary>What a visit was for. Only a failure, or a visit whose reason is not told, counts as one.</summary>
public static class VisitReason
{
    public const string Failure = "failure";
    public const string Preventive = "preventive";
    public const string Installation = "installation";
    public const string Inspection = "inspection";
}
