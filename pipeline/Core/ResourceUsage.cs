using System.Diagnostics;

namespace PartsSignal.Pipeline.Core;

/// <summary>What a piece of work took.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Seconds">Wall time.</param>
/// <param name="AllocatedMegabytes">Managed memory asked for meanwhile, by whatever else went on too; the engine's own is not in it.</param>
/// <param name="PeakMegabytes">Most memory the process has held so far, the engine's included.</param>
internal sealed record ResourceUsage(string Name, double Seconds, long AllocatedMegabytes, long PeakMegabytes);

/// <summary>Takes the footprints of pieces of work that follow one another.</summary>
internal sealed class ResourceMeter
{
    private const long Megabyte = 1024 * 1024;
    private readonly TimeProvider _clock;
    private long _started;
    private long _allocated;

    /// <summary>Begins the first piece.</summary>
    public ResourceMeter(TimeProvider clock)
    {
        _clock = clock;
        Begin();
    }

    /// <summary>Most memory the process has held so far.</summary>
    public static long PeakMegabytes()
    {
        using var self = Process.GetCurrentProcess();
        return self.PeakWorkingSet64 / Megabyte;
    }

    /// <summary>Ends a piece and begins the next.</summary>
    public ResourceUsage Next(string name)
    {
        double seconds = Math.Round(_clock.GetElapsedTime(_started).TotalSeconds, 3);
        var taken = new ResourceUsage(name, seconds, (GC.GetTotalAllocatedBytes() - _allocated) / Megabyte, PeakMegabytes());
        Begin();
        return taken;
    }

    private void Begin() => (_started, _allocated) = (_clock.GetTimestamp(), GC.GetTotalAllocatedBytes());
}
