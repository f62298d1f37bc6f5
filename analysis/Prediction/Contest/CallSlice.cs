namespace PartsSignal.Analysis.Prediction.Contest;

/// <summary>Calls of the test months with something of them held back, to see what an answer is worth when less is told.</summary>
/// <param name="Name">Short name in tables.</param>
/// <param name="What">What is held back, for people.</param>
/// <param name="Hide">The call without it.</param>
internal sealed record CallSlice(string Name, string What, Func<Call, Call> Hide)
{
    /// <summary>Most calls of a fold that are asked again: enough for the figures, and quick.</summary>
    public const int MostCalls = 600;

    /// <summary>All of them.</summary>
    public static readonly IReadOnlyList<CallSlice> All =
    [
        new("no_type", "Neither type, brand nor model told: complaint alone", NoType),
        new("no_model", "Type told, model not", c => c with { ModelFamily = null, ModelNumber = null }),
        new("unreadable_complaint", "A complaint none of whose words is known", Unreadable),
        new("no_type_unreadable_complaint", "Neither type nor a complaint that can be read", c => Unreadable(NoType(c))),
    ];

    /// <summary>Calls of a fold to ask again, evenly drawn.</summary>
    public IReadOnlyList<ClosedCall> From(IReadOnlyList<ClosedCall> calls)
    {
        int step = Math.Max(1, (calls.Count + MostCalls - 1) / MostCalls);
        return [.. calls.Where((_, i) => i % step == 0).Select(c => c with { Call = Hide(c.Call) })];
    }

    // Age and earlier visits are known by the unit; a caller who cannot say what it is cannot give them.
    private static Call NoType(Call call) => call with
    {
        ApplianceType = Call.Unknown,
        Brand = null,
        ModelFamily = null,
        ModelNumber = null,
        AgeYears = null,
        AgeBasis = Call.Unknown,
        MadeOn = null,
        Earlier = [],
    };

    private static Call Unreadable(Call call) => call with { ComplaintKind = Vocabulary.Need.OtherComplaint, ComplaintText = null };
}
