namespace PartsSignal.Pipeline.Rejects;

/// <summary>Removes files of refused rows that are too old, and remembers that they were removed for as long as their source stays as it is.</summary>
/// <param name="clock">Tells the day.</param>
/// <param name="days">Days that a file may stay.</param>
internal sealed class RejectAge(TimeProvider clock, int days)
{
    private const string Ending = ".expired";

    /// <summary>True when the file was removed for its age, now or before.</summary>
    /// <param name="file">The file of refused rows.</param>
    /// <param name="stageFolder">Folder of its source's staged rows, where a mark is left.</param>
    public bool IsExpired(string file, string stageFolder)
    {
        string mark = Path.Combine(stageFolder, Path.GetFileName(file) + Ending);
        if (!File.Exists(file))
        {
            return File.Exists(mark);
        }

        if (clock.GetUtcNow() - File.GetLastWriteTimeUtc(file) < TimeSpan.FromDays(days))
        {
            return false;
        }

        if (Directory.Exists(stageFolder))
        {
            File.WriteAllText(mark, "");
        }

        File.Delete(file);
        return Directory.Exists(stageFolder);
    }
}
