using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Staging;

/// <summary>What holds for all cells of one file.</summary>
/// <param name="Dates">Order of dates.</param>
/// <param name="Numbers">Style of amounts.</param>
/// <param name="LabourInHours">What a working time without a unit is: hours, else minutes.</param>
internal sealed record FileStyle(DateOrder Dates, NumberStyle Numbers, bool LabourInHours);
