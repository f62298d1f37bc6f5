using System.Text.Json;
using System.Text.Json.Serialization;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>A shop on this computer.</summary>
/// <param name="Name">Its name, as the owner typed it.</param>
/// <param name="Folder">Full path of its folder.</param>
internal sealed record ShopFolder(string Name, string Folder)
{
    /// <summary>The shop's own files and its <c>shop.json</c>.</summary>
    [JsonIgnore]
    public string Files => Path.Combine(Folder, "files");

    /// <summary>Everything the program writes.</summary>
    [JsonIgnore]
    public OutputFolder Output => new(Path.Combine(Folder, "out"));

    /// <summary>Copies of files that the owner took away.</summary>
    [JsonIgnore]
    public string Removed => Path.Combine(Folder, "removed-files");

    /// <summary>Another number for each set of figures that was published; it is only compared, so that the clock may be set.</summary>
    [JsonIgnore]
    public long FiguresStamp => File.GetLastWriteTimeUtc(Output.RunRecord).Ticks;

    /// <summary>The shop of the bench whose files these are, or null for a folder of somebody's own.</summary>
    public static ShopFolder? With(string files)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(files));
        return Path.GetDirectoryName(full) is { } folder && new ShopFolder(Path.GetFileName(folder), folder) is var shop && shop.Files == full
            && (Directory.Exists(shop.Removed) || Directory.Exists(ShopHistory.FolderOf(shop))) ? shop : null;
    }
}

/// <summary>The shops that were opened on this computer, and the one that is open. Kept in <c>shops.json</c> of the home folder.</summary>
/// <param name="home">Home folder; made when the first shop is added.</param>
internal sealed class KnownShops(string home)
{
    private const string FileName = "shops.json";
    private const int LongestName = 80;
    private static readonly JsonSerializerOptions Format = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };
    private readonly Lock _lock = new();

    /// <summary>The home folder of this user: local application data, which cloud drives leave alone.</summary>
    public static string DefaultHome => Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "PartsSignal");

    /// <summary>The home folder.</summary>
    public string Home => home;

    /// <summary>All shops, by name.</summary>
    public IReadOnlyList<ShopFolder> All => [.. Read().Shops.OrderBy(s => s.Name, StringComparer.CurrentCultureIgnoreCase)];

    /// <summary>The open shop, or null if there is none yet.</summary>
    public ShopFolder? Open => Read() is { Open: { } folder } list ? list.Shops.FirstOrDefault(s => s.Folder == folder) : null;

    /// <summary>Makes a folder for a new shop and opens it.</summary>
    /// <exception cref="BadInputException">The name is empty, too long or taken.</exception>
    public ShopFolder Add(string? name)
    {
        string shown = (name ?? "").Trim();
        if (shown.Length is 0 or > LongestName)
        {
            throw new BadInputException(shown.Length == 0 ? "Type the name of your shop." : $"The name is too long. Use {LongestName} characters or fewer.");
        }

        lock (_lock)
        {
            if (Read().Shops.Any(s => s.Name.Equals(shown, StringComparison.CurrentCultureIgnoreCase)))
            {
                throw new BadInputException($"There is already a shop named {shown}. Open it, or choose another name.");
            }

            var shop = new ShopFolder(shown, FreeFolder(shown));
            Directory.CreateDirectory(shop.Files);
            Keep(list => list with { Shops = [.. list.Shops, shop], Open = shop.Folder });
            return shop;
        }
    }

    /// <summary>Opens a known shop.</summary>
    /// <param name="folder">Its folder.</param>
    /// <returns>True when there is such a shop.</returns>
    public bool Choose(string? folder)
    {
        lock (_lock)
        {
            bool known = Read().Shops.Any(s => s.Folder == folder);
            if (known)
            {
                Keep(list => list with { Open = folder });
            }

            return known;
        }
    }

    private string FreeFolder(string name)
    {
        string plain = new([.. name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
        string start = string.Join('-', plain.Split('-', StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } some ? some : "shop";
        return Enumerable.Range(1, int.MaxValue)
            .Select(i => Path.Combine(Path.GetFullPath(home), "shops", i == 1 ? start : $"{start}-{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}"))
            .First(f => !Directory.Exists(f));
    }

    private ShopList Read()
    {
        string path = Path.Combine(home, FileName);
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<ShopList>(File.ReadAllText(path), Format) ?? new ShopList() : new ShopList();
        }
        catch (JsonException)
        {
            throw new BadInputException($"{path} cannot be read. Rename it and start again; your shops' folders are unchanged.");
        }
    }

    private void Keep(Func<ShopList, ShopList> change)
    {
        Directory.CreateDirectory(home);
        string path = Path.Combine(home, FileName);
        File.WriteAllText(path + ".part", JsonSerializer.Serialize(change(Read()), Format));
        File.Move(path + ".part", path, overwrite: true);
    }

    private sealed record ShopList
    {
        public string? Open { get; init; }

        public IReadOnlyList<ShopFolder> Shops { get; init; } = [];
    }
}
