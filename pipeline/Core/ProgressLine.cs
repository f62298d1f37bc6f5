using System.Globalization;

namespace PartsSignal.Pipeline.Core;

/// <summary>Progress of a load on one terminal line, all files together: rows, rows per second, time left.</summary>
internal sealed class ProgressLine : IProgress<StageProgress>
{
    private const double QuietSeconds = 0.25;
    private readonly TextWriter _writer;
    private readonly TimeProvider _clock;
    private readonly Lock _lock = new();
    private readonly Dictionary<string, StageProgress> _files = new(StringComparer.Ordinal);
    private long _started;
    private long _shown;
    private int _width;

    /// <summary>A progress line on the given writer.</summary>
    public ProgressLine(TextWriter writer, TimeProvider clock)
    {
        (_writer, _clock) = (writer, clock);
        _started = _shown = clock.GetTimestamp();
    }

    /// <summary>The progress line of a command, or null if the output is piped.</summary>
    public static ProgressLine? For(ProgramIo io) =>
        Console.IsErrorRedirected || !ReferenceEquals(io.Error, Console.Error) ? null : new ProgressLine(io.Error, io.Clock);

    /// <inheritdoc/>
    /// <remarks>Thread-safe.</remarks>
    public void Report(StageProgress value)
    {
        lock (_lock)
        {
            long now = _clock.GetTimestamp();
            if (_files.Count == 0)
            {
                (_started, _shown) = (now, now);
            }

            _files[value.File] = value;
            if (_clock.GetElapsedTime(_shown, now).TotalSeconds < QuietSeconds)
            {
                return;
            }

            _shown = now;
            string line = Text(_files.Values, _clock.GetElapsedTime(_started, now));
            _writer.Write('\r' + line.PadRight(_width));
            _width = line.Length;
        }
    }

    /// <summary>Erases the line.</summary>
    public void Clear()
    {
        lock (_lock)
        {
            _files.Clear();
            if (_width > 0)
            {
                _writer.Write('\r' + new string(' ', _width) + '\r');
                _width = 0;
            }
        }
    }

    /// <summary>The text of the line for the files and elapsed time.</summary>
    public static string Text(IReadOnlyCollection<StageProgress> files, TimeSpan since)
    {
        (long rows, long bytes, long all) = (files.Sum(f => f.Rows), files.Sum(f => f.Bytes), files.Sum(f => f.AllBytes));
        double seconds = Math.Max(since.TotalSeconds, 0.001);
        string named = files.Count == 1 ? files.First().File : string.Create(CultureInfo.InvariantCulture, $"{files.Count:N0} files");
        string line = string.Create(CultureInfo.InvariantCulture, $"{(named.Length > 30 ? "..." + named[^27..] : named)}: {rows:N0} rows, {rows / seconds:N0} a second");
        if (bytes <= 0 || bytes >= all)
        {
            return line;
        }

        var left = TimeSpan.FromSeconds(seconds * (all - bytes) / bytes);
        return string.Create(CultureInfo.InvariantCulture, $"{line}, {Math.Floor(left.TotalMinutes):0}:{left.Seconds:00} left");
    }
}

/// <summary>Progress of staging one file.</summary>
/// <param name="File">File name.</param>
/// <param name="Rows">Rows so far.</param>
/// <param name="Bytes">Bytes read so far, uncompressed and as UTF-8.</param>
/// <param name="AllBytes">Size of the whole file, uncompressed; an estimate at the start and at the end.</param>
internal readonly record struct StageProgress(string File, long Rows, long Bytes, long AllBytes);
