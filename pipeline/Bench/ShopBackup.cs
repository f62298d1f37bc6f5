using System.IO.Compression;
using System.Text;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// A shop in one zip: files, settings, answers, mended rows, the key that turns serials and addresses into identifiers, and
/// the list of forgotten customers, so that they stay forgotten where the zip is opened. It holds customers' data as typed, so it belongs in a safe place.
/// </summary>
internal static class ShopBackup
{
    private const string NameEntry = "shop-name.txt";
    private const string KeyEntry = "identity.key";
    private const string ForgottenEntry = "forgotten.txt";
    private const string SettledEntry = "settled-rows.txt";
    private const string FilesFolder = "files/";
    private const long MostBytes = 8L << 30;

    /// <summary>Name for the zip of a shop.</summary>
    public static string FileName(ShopFolder shop, DateOnly day) => $"{Path.GetFileName(shop.Folder)}-backup-{day:yyyy-MM-dd}.zip";

    /// <summary>Writes the zip.</summary>
    public static void Write(ShopFolder shop, Stream target)
    {
        using var zip = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8);
        using (var name = new StreamWriter(zip.CreateEntry(NameEntry).Open(), new UTF8Encoding(false)))
        {
            name.Write(shop.Name);
        }

        foreach (string path in Directory.EnumerateFiles(shop.Files, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith(".part", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            zip.CreateEntryFromFile(path, FilesFolder + Path.GetRelativePath(shop.Files, path).Replace('\\', '/'));
        }

        foreach ((string path, string entry) in new[] { (shop.Output.Key, KeyEntry), (shop.Output.Forgotten, ForgottenEntry), (Path.Combine(shop.Folder, SettledEntry), SettledEntry) }.Where(f => File.Exists(f.Item1)))
        {
            zip.CreateEntryFromFile(path, entry);
        }
    }

    /// <summary>Makes a shop of a zip and opens it. A shop that is there already is never touched.</summary>
    /// <exception cref="BadInputException">The file is not a backup of ours.</exception>
    public static ShopFolder Restore(KnownShops shops, Stream source)
    {
        try
        {
            using var zip = new ZipArchive(source, ZipArchiveMode.Read, leaveOpen: true);
            string name = zip.GetEntry(NameEntry) is { } entry ? Text(entry) : throw NotOurs();
            if (zip.Entries.Sum(e => e.Length) > MostBytes || zip.Entries.Any(e => !IsSafe(e.FullName)))
            {
                throw NotOurs();
            }

            ShopFolder shop = shops.Add(Free(shops, name));
            foreach (ZipArchiveEntry file in zip.Entries.Where(e => e.FullName != NameEntry && !e.FullName.EndsWith('/')))
            {
                string target = file.FullName switch
                {
                    KeyEntry => shop.Output.Key,
                    ForgottenEntry => shop.Output.Forgotten,
                    _ => Path.Combine(shop.Folder, file.FullName),
                };
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                file.ExtractToFile(target);
            }

            return shop;
        }
        catch (InvalidDataException)
        {
            throw NotOurs();
        }
    }

    private static BadInputException NotOurs() => new("This is not a backup that PartsSignal made. Choose the zip file that Backup saved.");

    // Entries may only lead into the shop's own folder.
    private static bool IsSafe(string name) =>
        name is NameEntry or KeyEntry or ForgottenEntry or SettledEntry
        || (name.StartsWith(FilesFolder, StringComparison.Ordinal) && !name.Contains('\\', StringComparison.Ordinal) && !name.Contains(':', StringComparison.Ordinal) && !name.Split('/').Any(p => p is ".." or "."));

    private static string Text(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open(), Encoding.UTF8);
        var start = new char[200];
        return new string(start, 0, reader.ReadBlock(start, 0, start.Length)).Trim();
    }

    private static string Free(KnownShops shops, string name)
    {
        IReadOnlyList<ShopFolder> all = shops.All;
        return Enumerable.Range(1, int.MaxValue)
            .Select(i => i == 1 ? name : $"{name} ({i.ToString(System.Globalization.CultureInfo.InvariantCulture)})")
            .First(n => !all.Any(s => s.Name.Equals(n, StringComparison.CurrentCultureIgnoreCase)));
    }
}
