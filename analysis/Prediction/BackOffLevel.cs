using PartsSignal.Analysis.Vocabulary;

namespace PartsSignal.Analysis.Prediction;

/// <summary>One level of the chain from all jobs down to jobs of the very model.</summary>
/// <param name="Name">Its name in answers and files.</param>
/// <param name="Key">Group of a call at this level, or null if the call does not reach it.</param>
public sealed record BackOffLevel(string Name, Func<Call, string?> Key)
{
    /// <summary>Everything the shop ever closed.</summary>
    public const string All = "all";

    /// <summary>The same complaint kind on any appliance.</summary>
    public const string Complaint = "complaint";

    /// <summary>Jobs on the same type of appliance.</summary>
    public const string Type = "type";

    /// <summary>The same type and complaint kind.</summary>
    public const string TypeComplaint = "type_complaint";

    /// <summary>The same type, complaint kind and age band.</summary>
    public const string TypeComplaintAge = "type_complaint_age";

    /// <summary>The same family and complaint kind.</summary>
    public const string FamilyComplaint = "family_complaint";

    /// <summary>The same family, complaint kind and age band.</summary>
    public const string FamilyComplaintAge = "family_complaint_age";

    /// <summary>The same model number and complaint kind.</summary>
    public const string ModelComplaint = "model_complaint";

    /// <summary>The chain, widest first.</summary>
    public static readonly IReadOnlyList<BackOffLevel> Chain =
    [
        new(All, _ => ""),
        new(Type, c => c.ApplianceType),
        new(TypeComplaint, c => Join(c.ApplianceType, c.ComplaintKind)),
        new(TypeComplaintAge, c => Join(c.ApplianceType, c.ComplaintKind, Band(c))),
        new(FamilyComplaint, c => c.ModelFamily is { } f ? Join(f, c.ComplaintKind) : null),
        new(FamilyComplaintAge, c => c.ModelFamily is { } f ? Join(f, c.ComplaintKind, Band(c)) : null),
        new(ModelComplaint, c => c.ModelNumber is { } m && c.ModelFamily is not null ? Join(m, c.ComplaintKind) : null),
    ];

    /// <summary>The chain of the plainest contender: a tally sheet per complaint.</summary>
    public static readonly IReadOnlyList<BackOffLevel> ComplaintOnly = [Chain[0], new(Complaint, c => c.ComplaintKind)];

    /// <summary>The same with a sheet per type of appliance.</summary>
    public static readonly IReadOnlyList<BackOffLevel> ComplaintOnType = [.. Chain.Take(3)];

    /// <summary>All levels there are.</summary>
    public static readonly IReadOnlyList<BackOffLevel> Every = [.. Chain, ComplaintOnly[1]];

    private static string Band(Call call) => AgeBand.FromYears(call.AgeYears)?.ToString() ?? AgeBand.UnknownText;

    private static string Join(params ReadOnlySpan<string> parts) => string.Join('\u001f', parts!);
}
