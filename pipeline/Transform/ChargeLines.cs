using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Pipeline.Transform;

/// <summary>Lines of jobs that charge for work, travel or a fee, and name no part.</summary>
/// <param name="Lines">How many.</param>
/// <param name="Examples">Their commonest words.</param>
internal sealed record ChargeLines(long Lines, string Examples)
{
    /// <summary>The count of a load.</summary>
    public static ChargeLines Read(Database database) => database.Read<ChargeLines>("queries/session/charge_lines.sql")[0];

    /// <summary>What was assumed, or null if there are none.</summary>
    public string? Sentence => Lines switch
    {
        0 => null,
        1 => $"1 line is a charge for work, travel or a fee, not a part: {Examples}.",
        _ => string.Create(CultureInfo.InvariantCulture, $"{Lines:N0} lines are charges for work, travel or fees, not parts: {Examples}."),
    };
}
