using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A file that goes into an update.</summary>
/// <param name="Bytes">Its length.</param>
/// <param name="Written">When it was last written, ticks of UTC.</param>
/// <param name="Hash">Hash of its contents, lower-case hex.</param>
internal sealed record InputState(long Bytes, long Written, string Hash);

/// <summary>What goes into an update: the shop's files, settings, answers and mended rows.</summary>
/// <param name="Files">Path in the files folder to the file's state.</param>
internal sealed record ShopInputs(IReadOnlyDictionary<string, InputState> Files)
{
    private static readonly string[] Ignored = [ShopFileWriter.PreviousName, ShopSchema.FileName];

    /// <summary>Path to hash.</summary>
    [JsonIgnore]
    public IReadOnlyDictionary<string, string> Hashes => Files.ToDictionary(f => f.Key, f => f.Value.Hash, StringComparer.Ordinal);

    /// <summary>The files as they are now.</summary>
    /// <param name="folder">The files folder.</param>
    /// <param name="known">An earlier look: a file of the same length and time is not read again. Null for none.</param>
    public static ShopInputs Now(string folder, ShopInputs? known = null)
    {
        IEnumerable<string> files = Directory.Exists(folder) ? Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories) : [];
        return new ShopInputs(files.Where(f => !f.EndsWith(".part", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(f => (File: f, Path: Path.GetRelativePath(folder, f).Replace('\\', '/')))
            .ToDictionary(f => f.Path, f => Look(f.File, known?.Files.GetValueOrDefault(f.Path)), StringComparer.Ordinal));
    }

    /// <summary>Paths whose contents differ, sorted; the program's own copies of the settings do not count.</summary>
    public static IReadOnlyList<string> Differing(IReadOnlyDictionary<string, string> old, IReadOnlyDictionary<string, string> now) =>
        [.. old.Keys.Union(now.Keys, StringComparer.Ordinal).Where(p => !Ignored.Contains(p) && old.GetValueOrDefault(p) != now.GetValueOrDefault(p)).Order(StringComparer.Ordinal)];

    private static InputState Look(string path, InputState? known)
    {
        var file = new FileInfo(path);
        long written = file.LastWriteTimeUtc.Ticks;
        if (known is not null && known.Bytes == file.Length && known.Written == written)
        {
            return known;
        }

        using FileStream stream = file.OpenRead();
        return new InputState(file.Length, written, Convert.ToHexStringLower(SHA256.HashData(stream)));
    }
}

/// <summary>What the figures of the last update were made of, to tell whether they are still up to date.</summary>
internal static class FiguresBasis
{
    private static readonly JsonSerializerOptions Format = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    /// <summary>Keeps it, once the figures are published.</summary>
    public static void Save(ShopFolder shop, ShopInputs inputs)
    {
        string path = PathOf(shop);
        File.WriteAllText(path + ".part", JsonSerializer.Serialize(new Kept(shop.FiguresStamp, inputs), Format));
        File.Move(path + ".part", path, overwrite: true);
    }

    /// <summary>What the figures are made of, or null where that is unknown: there are none, or another program made them.</summary>
    public static ShopInputs? Read(ShopFolder shop)
    {
        try
        {
            return File.Exists(PathOf(shop)) && JsonSerializer.Deserialize<Kept>(File.ReadAllText(PathOf(shop)), Format) is { Inputs.Files: not null } kept && kept.Published == shop.FiguresStamp ? kept.Inputs : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>What was changed since the figures were made, in words; empty: nothing, or that is unknown.</summary>
    public static IReadOnlyList<string> ChangesSince(ShopFolder shop)
    {
        if (Read(shop) is not { } basis)
        {
            return [];
        }

        IReadOnlyDictionary<string, string> old = basis.Hashes;
        return InputChanges.Describe(
            old,
            ShopInputs.Now(shop.Files, basis).Hashes,
            path => InputChanges.Text(Path.Combine(ShopHistory.ContentsOf(shop), old[path])),
            path => InputChanges.Text(Path.Combine(shop.Files, path)));
    }

    private static string PathOf(ShopFolder shop) => Path.Combine(shop.Folder, "figures-of.json");

    private sealed record Kept(long Published, ShopInputs Inputs);
}
