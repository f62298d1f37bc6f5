namespace PartsSignal.Pipeline.Core;

/// <summary>How far the staging of one file is.</summary>
/// <param name="File">Its own name.</param>
/// <param name="Rows">Rows so far.</param>
/// <param name="Bytes">Bytes read so far, unpacked and as UTF-8.</param>
/// <param name="AllBytes">Bytes of the whole file, unpacked; about as many before it was looked at and at its end.</param>
internal readonly record struct StageProgress(string File, long Rows, long Bytes, long AllBytes);
