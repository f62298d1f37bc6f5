using System.Globalization;

namespace PartsSignal.Pipeline.Core;

/// <summary>Shows on one line of a terminal how far a long load is, all its files together: rows, rows a second, time left.</summary>
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

    /// <summary>Shows on a writer.</summary>
    public ProgressLine(TextWriter writer, TimeProvider clock)
    {
        (_writer, _clock) = (writer, clock);
        _started = _shown = clock.GetTimestamp();
    }

    /// <summary>The line for a command; null where nobody watches, because the output is piped.</summary>
    public static ProgressLine? For(ProgramIo io) =>
        Console.IsErrorRedirected || !ReferenceEquals(io.Error, Console.Error) ? null : new ProgressLine(io.Error, io.Clock);

    /// <inheritdoc/>
    /// <remarks>Several threads may report.</remarks>
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

    /// <summary>Wipes the line.</summary>
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

    /// <summary>What the line says of these files after a time.</summary>
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

/// <summary>How far the staging of one file is.</summary>
/// <param name="File">Its own name.</param>
/// <param name="Rows">Rows so far.</param>
/// <param name="Bytes">Bytes read so far, unpacked and as UTF-8.</param>
/// <param name="AllBytes">Bytes of the whole file, unpacked; about as many before it was looked at and at its end.</param>
internal readonly record struct StageProgress(string File, long Rows, long Bytes, long AllBytes);
