using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Jobs that were no failures: preventive work, installations and inspections.</summary>
/// <param name="Jobs">How many.</param>
/// <param name="Files">The job logs they stand in; the first three, and how many more.</param>
internal sealed record PlannedVisits(long Jobs, string Files)
{
    /// <summary>The count of a load.</summary>
    public static PlannedVisits Read(Database database) => database.Read<PlannedVisits>("queries/session/planned_visits.sql")[0];

    /// <summary>What is left out of the failures, or null if there is nothing.</summary>
    public string? Sentence => Jobs switch
    {
        0 => null,
        1 => $"1 job in {Files} is preventive work, an installation or an inspection. It does not count as a failure.",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Jobs:N0} jobs in {Files} are preventive work, installations or inspections. They do not count as failures."),
    };
}
