using System.Globalization;

namespace PartsSignal.Benchmarks.Loading;

/// <summary>A whole load, from files to store, in a process of its own: the sample shop with one long job log.</summary>
public sealed class LoadWorkload : IWorkload, IDisposable
{
    private string? _folder;

    /// <inheritdoc/>
    public string Name => "load";

    /// <inheritdoc/>
    public int DefaultSize => 1_000_000;

    /// <inheritdoc/>
    public string Unit => "rows";

    /// <inheritdoc/>
    public void Prepare(int size)
    {
        Dispose();
        _folder = Directory.CreateTempSubdirectory("partssignal-load-").FullName;
        BigShop.Write(Directory.CreateDirectory(Path.Combine(_folder, "shop")).FullName, size);
    }

    /// <inheritdoc/>
    public string Run()
    {
        var load = ChildProgram.Run("load", "--steps", "--input", Path.Combine(_folder!, "shop"), "--out", Path.Combine(_folder!, "out"));
        Dispose();
        return string.Create(CultureInfo.InvariantCulture, $"{load.Seconds:0.0} s and {load.PeakMegabytes:N0} MB at its peak in a process of its own");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_folder is not null)
        {
            Directory.Delete(_folder, recursive: true);
            _folder = null;
        }
    }
}
