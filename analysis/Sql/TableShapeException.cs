namespace PartsSignal.Analysis.Sql;

/// <summary>A table lacks a column that is read, or has it in another type: another version of the program wrote it.</summary>
/// <param name="message">The table and all that is wrong with it.</param>
public sealed class TableShapeException(string message) : InvalidOperationException(message);
