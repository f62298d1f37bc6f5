using System.Globalization;
using PartsSignal.Pipeline.Commands;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Shows on one line of a terminal how far a long load is: rows, rows a second, time left.</summary>
public sealed class ProgressLine : IProgress<StageProgress>
{
    private const double QuietSeconds = 0.25;
    private readonly TextWriter _writer;
    private readonly TimeProvider _clock;
    private string _file = "";
    private long _started;
    private long _shown;
    private int _width;

    /// <summary>Shows on a writer.</summary>
    public ProgressLine(TextWriter writer, TimeProvider clock) => (_writer, _clock) = (writer, clock);

    /// <summary>The line for a command; null where nobody watches, because the output is piped.</summary>
    public static ProgressLine? For(ProgramIo io) =>
        Console.IsErrorRedirected || !ReferenceEquals(io.Error, Console.Error) ? null : new ProgressLine(io.Error, io.Clock);

    /// <inheritdoc/>
    public void Report(StageProgress value)
    {
        long now = _clock.GetTimestamp();
        if (value.File != _file)
        {
            (_file, _started, _shown) = (value.File, now, now);
        }

        if (_clock.GetElapsedTime(_shown, now).TotalSeconds < QuietSeconds)
        {
            return;
        }

        _shown = now;
        string line = Text(value, _clock.GetElapsedTime(_started, now));
        _writer.Write('\r' + line.PadRight(_width));
        _width = line.Length;
    }

    /// <summary>Wipes the line.</summary>
    public void Clear()
    {
        if (_width > 0)
        {
            _writer.Write('\r' + new string(' ', _width) + '\r');
            _width = 0;
        }
    }

    /// <summary>What the line says after a time.</summary>
    public static string Text(StageProgress value, TimeSpan since)
    {
        double seconds = Math.Max(since.TotalSeconds, 0.001);
        string name = value.File.Length > 30 ? "..." + value.File[^27..] : value.File;
        string line = string.Create(CultureInfo.InvariantCulture, $"{name}: {value.Rows:N0} rows, {value.Rows / seconds:N0} a second");
        if (value.Bytes <= 0 || value.Bytes >= value.AllBytes)
        {
            return line;
        }

        var left = TimeSpan.FromSeconds(seconds * (value.AllBytes - value.Bytes) / value.Bytes);
        return string.Create(CultureInfo.InvariantCulture, $"{line}, {Math.Floor(left.TotalMinutes):0}:{left.Seconds:00} left");
    }
}
