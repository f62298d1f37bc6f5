namespace PartsSignal.Tests;

/// <summary>Copies what a load left behind: milliseconds, where a load takes a second.</summary>
internal static class FolderCopy
{
    /// <summary>Copies a folder with all below it; links that lead into the folder lead into the copy.</summary>
    public static void Write(string from, string to) => Write(new DirectoryInfo(from), to, path => path.Replace(from, to, StringComparison.Ordinal));

    private static void Write(DirectoryInfo from, string to, Func<string, string> moved)
    {
        Directory.CreateDirectory(to);
        foreach (FileSystemInfo entry in from.EnumerateFileSystemInfos())
        {
            string copy = Path.Combine(to, entry.Name);
            if (entry.LinkTarget is { } target)
            {
                Directory.CreateSymbolicLink(copy, moved(target));
            }
            else if (entry is DirectoryInfo folder)
            {
                Write(folder, copy, moved);
            }
            else
            {
                File.Copy(entry.FullName, copy);
            }
        }
    }
}
