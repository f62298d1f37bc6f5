namespace PartsSignal.Analysis.Prediction;

/// <summary>A call whose answer is known.</summary>
/// <param name="JobId">The job.</param>
/// <param name="OpenedOn">Day of the call.</param>
/// <param name="ClosedOn">Day the answer was known; nothing before that day may learn from it.</param>
/// <param name="UnitId">The appliance; null: cannot be told.</param>
/// <param name="Need">What it needed: a component, <c>none</c> or <c>other_part</c>.</param>
/// <param name="Call">What was known at booking.</param>
public sealed record ClosedCall(string JobId, DateOnly OpenedOn, DateOnly ClosedOn, string? UnitId, string Need, Call Call);
