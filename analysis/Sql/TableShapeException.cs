namespace PartsSignal.Analysis.Sql;

/// <summary>A table lacks columns that are read, or has them in another type: another version of the program wrote it.</summary>
/// <param name="message">The table and all that is wrong with it.</param>
public sealed class TableShapeException(string message) : InvalidOperationException(message);
