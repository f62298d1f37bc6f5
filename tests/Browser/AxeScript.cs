namespace PartsSignal.Tests;

/// <summary>axe-core, the accessibility checker: <c>npm install</c> in <c>tests/Browser</c> puts it there.</summary>
internal static class AxeScript
{
    public static string? Text { get; } = Read();

    private static string? Read()
    {
        string file = Path.Combine(RepositoryFolder.Root, "tests", "Browser", "node_modules", "axe-core", "axe.min.js");
        return File.Exists(file) ? File.ReadAllText(file) : null;
    }
}
