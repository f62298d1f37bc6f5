namespace PartsSignal.Analysis.Vocabulary;

/// <summary>
/// From which day a machine's age counts, in every rate, curve and set. <c>int_unit_births.sql</c> is its one definition for
/// a machine, <c>int_job_ages.sql</c> for what was known on the day of a call.
/// </summary>
public static class MachineAge
{
    /// <summary>The definition for a reader of a figure by age.</summary>
    public const string Words = "Age counts from the build date. If that is not known to within a year, we take the machine to be six months old when it was installed or bought.";
}
