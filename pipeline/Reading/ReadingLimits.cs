namespace PartsSignal.Pipeline.Reading;

/// <summary>How much one input file may ask of this machine; what goes beyond is refused with a reason.</summary>
internal sealed record ReadingLimits
{
    /// <summary>Longest row, in bytes of UTF-8, 1,000 or more. A longer one is a reject. Default 1 MiB.</summary>
    public int MaxRowBytes { get; init; } = 1 << 20;

    /// <summary>Most columns in a row, 2 or more. Default 2,000.</summary>
    public int MaxColumns { get; init; } = 2_000;

    /// <summary>Most bytes one packed file may unpack to. Default 16 GiB.</summary>
    public long MaxUnpackedBytes { get; init; } = 16L << 30;

    /// <summary>Most bytes out per byte in, once 64 MiB came out. Default 200.</summary>
    public int MaxUnpackRatio { get; init; } = 200;

    /// <summary>Most entries of one zip. Default 10,000.</summary>
    public int MaxEntries { get; init; } = 10_000;

    /// <summary>Most bytes a workbook may unpack to: it is held in memory. Default 512 MiB.</summary>
    public long MaxWorkbookBytes { get; init; } = 512L << 20;
}
