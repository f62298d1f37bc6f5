namespace PartsSignal.Tests;

/// <summary>Places of the checkout the tests run from.</summary>
internal static class RepositoryFolder
{
    /// <summary>Folder that holds PartsSignal.sln.</summary>
    public static string Root { get; } = Find();

    /// <summary>The sample shop's files.</summary>
    public static string SampleShop => Path.Combine(Root, "data-sample");

    /// <summary>Files from elsewhere that are tried where they are there; null: they are not.</summary>
    public static string? RealFiles
    {
        get
        {
            string folder = Path.GetFullPath(Path.Combine(Root, "..", "shared", "real"));
            return Directory.Exists(folder) ? folder : null;
        }
    }

    private static string Find()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "PartsSignal.sln")))
        {
            at = at.Parent;
        }

        return at?.FullName ?? throw new InvalidOperationException("The tests run from within a checkout.");
    }
}
