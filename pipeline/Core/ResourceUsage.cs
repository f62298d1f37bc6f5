using System.Diagnostics;

namespace PartsSignal.Pipeline.Core;

/// <summary>Resources used by a piece of work.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Seconds">Wall time.</param>
/// <param name="AllocatedMegabytes">Managed memory allocated meanwhile by all threads; excludes the engine's native memory.</param>
/// <param name="PeakMegabytes">Peak memory of the process so far, including the engine's.</param>
internal sealed record ResourceUsage(string Name, double Seconds, long AllocatedMegabytes, long PeakMegabytes);

/// <summary>Measures consecutive pieces of work.</summary>
internal sealed class ResourceMeter
{
    private const long Megabyte = 1024 * 1024;
    private readonly TimeProvider _clock;
    private long _started;
    private long _allocated;

    /// <summary>Starts measuring the first piece.</summary>
    public ResourceMeter(TimeProvider clock)
    {
        _clock = clock;
        Begin();
    }

    /// <summary>Peak memory of the process so far.</summary>
    public static long PeakMegabytes()
    {
        using var self = Process.GetCurrentProcess();
        return self.PeakWorkingSet64 / Megabyte;
    }

    /// <summary>Ends a piece and starts the next.</summary>
    public ResourceUsage Next(string name)
    {
        double seconds = Math.Round(_clock.GetElapsedTime(_started).TotalSeconds, 3);
        var taken = new ResourceUsage(name, seconds, (GC.GetTotalAllocatedBytes() - _allocated) / Megabyte, PeakMegabytes());
        Begin();
        return taken;
    }

    private void Begin() => (_started, _allocated) = (_clock.GetTimestamp(), GC.GetTotalAllocatedBytes());
}
