namespace PartsSignal.Pipeline.Staging;

/// <summary>Where the rows of one file go and what they are made with.</summary>
/// <param name="Files">The staged tables' files.</param>
/// <param name="SourceFile">Name of the file.</param>
/// <param name="SourceOrder">Its position.</param>
/// <param name="Map">Its fields.</param>
/// <param name="Tools">Key, words, serials.</param>
internal sealed record StageTarget(StagedTableFiles Files, string SourceFile, int SourceOrder, FieldMap Map, StagingTools Tools);
