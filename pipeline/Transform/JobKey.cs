using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>What tells jobs apart whose numbers do not: see <c>int_job_key</c>.</summary>
/// <param name="Way">What is added to the number: <c>year</c>, <c>technician</c>, <c>technician and year</c>, <c>file</c>; <c>number</c>: nothing explains them.</param>
/// <param name="Numbers">Numbers that stand for different units or days.</param>
/// <param name="Unexplained">Those that still do with what is added.</param>
/// <param name="Files">Files concerned.</param>
/// <param name="JobNumber">An example as typed, or null if there is none.</param>
/// <param name="JobId">What it goes by.</param>
internal sealed record JobKey(string Way, long Numbers, long Unexplained, string Files, string? JobNumber, string? JobId)
{
    /// <summary>The key of a load; null: every number tells its job.</summary>
    public static JobKey? Read(Database database) => database.Read<JobKey>("queries/session/job_key.sql") is [var key] ? key : null;

    /// <summary>What was assumed, with the count that proves it.</summary>
    public string Sentence => string.Create(CultureInfo.InvariantCulture, $"Job numbers in {Files}: {Numbers:N0} {(Numbers == 1 ? "stands" : "stand")} for different units or days, so {Told}.");

    private string Told => Way switch
    {
        "number" => $"each unit and day counts as a job of its own{Example}",
        "file" => $"a job is its number and file{Example}",
        "technician and year" => $"a job is its number, technician and year{Example}",
        _ => $"a job is its number and {Way}{Example}",
    } + (Way != "number" && Unexplained > 0 ? string.Create(CultureInfo.InvariantCulture, $"; {Unexplained:N0} still do, and each unit and day of them counts as a job of its own") : "");

    private string Example => JobId is null ? "" : $" ({JobNumber} is {JobId})";
}
