namespace PartsSignal.EndToEnd.Tests;

/// <summary>A folder of its own that goes when the test ends.</summary>
internal sealed class ScratchFolder : IDisposable
{
    public ScratchFolder() => Path = Directory.CreateTempSubdirectory("partssignal-").FullName;

    public string Path { get; }

    public string Sub(string name) => System.IO.Path.Combine(Path, name);

    public void Write(string name, string text)
    {
        string file = Sub(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    /// <summary>A folder of its own with the same in it.</summary>
    public ScratchFolder Copy()
    {
        var copy = new ScratchFolder();
        FolderCopy.Write(Path, copy.Path);
        return copy;
    }

    public void Dispose()
    {
        if (Directory.Exists(Path))
        {
            Directory.Delete(Path, recursive: true);
        }
    }
}
