namespace PartsSignal.Analysis.Vocabulary;

/// <summary>Special values of <c>jobs.main_component</c> and <c>jobs.complaint_kind</c>.</summary>
public static class Need
{
    /// <summary>The job needed no part.</summary>
    public const string NoPart = "none";

    /// <summary>A part was fitted whose component nobody can tell.</summary>
    public const string OtherPart = "other_part";

    /// <summary>Complaint kind where nothing was typed.</summary>
    public const string NoComplaint = "none";

    /// <summary>Complaint kind where the words are in no table.</summary>
    public const string OtherComplaint = "other";
}
