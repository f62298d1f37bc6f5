using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.Rates;

/// <summary>Everything the failure rates are computed from, as SQL counted it.</summary>
/// <param name="Groups">Sizes of all groups.</param>
/// <param name="Counts">Subjects with at least one event, by group.</param>
public sealed record RateCounts(IReadOnlyList<GroupSize> Groups, IReadOnlyList<SubjectCount> Counts)
{
    private readonly Dictionary<(RateGroup, RateSubject), long> _events = Counts.ToDictionary(c => (c.Group, c.Subject), c => c.Events);

    private readonly ILookup<(string Basis, string Type), RateSubject> _subjects = Counts
        .Where(c => c.Group.Grouping == "type")
        .ToLookup(c => (c.Group.Basis, c.Group.ApplianceType), c => c.Subject);

    /// <summary>Reads the counts of a session in which the rate tables were built.</summary>
    public static RateCounts Read(Database database) => new(
        database.ReadTable<GroupSize>("rate_groups"), database.ReadTable<SubjectCount>("rate_counts"));

    /// <summary>Events of a subject in a group; 0 where none was seen.</summary>
    public long Events(RateGroup group, RateSubject subject) => _events.GetValueOrDefault((group, subject));

    /// <summary>Subjects that this basis has seen on any appliance of the type: where one of them is not counted, it was at risk and did not happen.</summary>
    public IEnumerable<RateSubject> Subjects(RateGroup group) => _subjects[(group.Basis, group.ApplianceType)]
        .Where(s => group.GivenComplaint is null || s.Kind == RateSubject.Component);
}
