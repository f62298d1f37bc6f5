namespace PartsSignal.Pipeline.Staging;

/// <summary>Where the rows of one file go and what they are made with.</summary>
/// <param name="Files">The staged tables' files.</param>
/// <param name="Map">Its fields.</param>
/// <param name="Tools">Key, words, serials.</param>
internal sealed record StageTarget(StagedTableFiles Files, FieldMap Map, StagingTools Tools);
