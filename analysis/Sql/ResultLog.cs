namespace PartsSignal.Analysis.Sql;

/// <summary>What building one table took.</summary>
/// <param name="Table">Its name.</param>
/// <param name="Rows">Rows it has.</param>
/// <param name="Seconds">Seconds, checks included.</param>
public sealed record ResultLog(string Table, long Rows, double Seconds);
