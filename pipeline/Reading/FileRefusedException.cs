using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// One file that cannot be read as a whole: damaged, unreadable, gone, empty, beyond a limit. A load goes on without
/// it and says so; anything else that is wrong with a file is a matter of its map and stops the load.
/// </summary>
internal sealed class FileRefusedException : BadInputException
{
    /// <summary>Refuses a file.</summary>
    /// <param name="file">Its name.</param>
    /// <param name="fault">Why.</param>
    public FileRefusedException(string file, RowFault fault)
        : base($"{file}: {fault.Message} {fault.Suggestion}") => Fault = fault;

    /// <summary>Why.</summary>
    public RowFault Fault { get; }
}
