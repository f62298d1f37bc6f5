using System.Globalization;
using System.Text.Json;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Bench;

/// <summary>The shop's files as they were at one update.</summary>
/// <param name="Number">Counts up from 1.</param>
/// <param name="At">When the update ended.</param>
/// <param name="Rows">Rows that were read.</param>
/// <param name="Files">Path in the files folder to the hash of the contents.</param>
internal sealed record HistoryEntry(int Number, DateTimeOffset At, long Rows, IReadOnlyDictionary<string, string> Files);

/// <summary>
/// The last updates of a shop, so that a person can go back to one. Only what goes in is kept: the shop's files, settings,
/// answers, and mended rows. What comes out follows from it. Contents that did not change are kept once.
/// </summary>
/// <param name="shop">The shop.</param>
/// <param name="clock">Dates the entries.</param>
internal sealed class ShopHistory(ShopFolder shop, TimeProvider clock)
{
    /// <summary>Updates kept.</summary>
    public const int Most = 10;

    // Copies must leave the disk room for the next update.
    private const long LeastFreeBytes = 1L << 30;

    private static readonly JsonSerializerOptions Format = new() { WriteIndented = true, PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };
    private readonly string _folder = FolderOf(shop);

    private string Contents => ContentsOf(shop);

    /// <summary>Where the contents of a shop's updates are kept, a file for each hash.</summary>
    public static string ContentsOf(ShopFolder shop) => Path.Combine(FolderOf(shop), "contents");

    /// <summary>Where a shop's updates are kept.</summary>
    public static string FolderOf(ShopFolder shop) => Path.Combine(shop.Folder, "history");

    private string Pending => Path.Combine(shop.Folder, "forget-pending.txt");

    /// <summary>True while a customer who is to be forgotten may still stand in the store before the next one.</summary>
    public bool IsForgetting => File.Exists(Pending);

    /// <summary>Says that the store before is gone.</summary>
    public void EndForgetting() => File.Delete(Pending);

    /// <summary>The entries, newest first.</summary>
    public IReadOnlyList<HistoryEntry> Entries => !Directory.Exists(_folder) ? [] :
        [.. Directory.EnumerateFiles(_folder, "*.json").Select(f => JsonSerializer.Deserialize<HistoryEntry>(File.ReadAllText(f), Format)!).OrderByDescending(e => e.Number)];

    /// <summary>Keeps the files as they are now. Nothing is kept when they are as at the last update, or when the disk is nearly full.</summary>
    /// <param name="rows">Rows that were read.</param>
    /// <returns>False when the disk is too full to keep them.</returns>
    public bool Keep(long rows)
    {
        IReadOnlyDictionary<string, string> hashes = ShopInputs.Now(shop.Files, FiguresBasis.Read(shop)).Hashes;
        IReadOnlyList<HistoryEntry> entries = Entries;
        var entry = new HistoryEntry(entries.Count == 0 ? 1 : entries[0].Number + 1, clock.GetUtcNow(), rows, hashes);
        if (entries.Count > 0 && ShopInputs.Differing(entries[0].Files, hashes).Count == 0)
        {
            return true;
        }

        Directory.CreateDirectory(Contents);
        long fresh = hashes.Where(h => !File.Exists(Path.Combine(Contents, h.Value))).Sum(h => new FileInfo(Path.Combine(shop.Files, h.Key)).Length);
        if (new DriveInfo(Path.GetFullPath(_folder)).AvailableFreeSpace - fresh < LeastFreeBytes)
        {
            return false;
        }

        foreach ((string path, string hash) in hashes)
        {
            string target = Path.Combine(Contents, hash);
            if (!File.Exists(target))
            {
                File.Copy(Path.Combine(shop.Files, path), target + ".part", overwrite: true);
                File.Move(target + ".part", target);
            }
        }

        string manifest = ManifestOf(entry);
        File.WriteAllText(manifest + ".part", JsonSerializer.Serialize(entry, Format));
        File.Move(manifest + ".part", manifest, overwrite: true);
        Prune();
        return true;
    }

    /// <summary>What was different from the update before it, in words; empty: nothing, or there is none before it.</summary>
    public IReadOnlyList<string> Changes(HistoryEntry entry) => Entries.FirstOrDefault(e => e.Number < entry.Number) is not { } before ? [] :
        InputChanges.Describe(before.Files, entry.Files, path => InputChanges.Text(Path.Combine(Contents, before.Files[path])), path => InputChanges.Text(Path.Combine(Contents, entry.Files[path])));

    /// <summary>
    /// Puts the files back as they were. What is there now was kept at its own update, or goes to <c>removed-files</c>.
    /// <see cref="UpdateRollback"/> ends or undoes it.
    /// </summary>
    /// <exception cref="BadInputException">There is no such entry, or another program is updating the shop.</exception>
    public async Task GoBackAsync(int number, CancellationToken cancellation)
    {
        try
        {
            // A load must not find half of the files.
            using (await StoreLock.TakeAsync(shop.Output.Root, TimeSpan.Zero, clock, cancellation).ConfigureAwait(false))
            {
                GoBack(number);
            }
        }
        catch (StoreBusyException)
        {
            throw new BadInputException(BenchWork.Busy);
        }
    }

    private void GoBack(int number)
    {
        HistoryEntry entry = Entries.FirstOrDefault(e => e.Number == number) ?? throw new BadInputException($"There is no update {number.ToString(CultureInfo.InvariantCulture)} to go back to.");
        new UpdateRollback(shop).Begin(number, fresh =>
        {
            foreach ((string path, string hash) in entry.Files)
            {
                string target = Path.Combine(fresh, path);
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(Path.Combine(Contents, hash), target);
            }
        });
    }

    /// <summary>
    /// Removes all updates and the files set aside: they hold customers as typed, also one who is to be forgotten. Until the
    /// next update is done, <see cref="IsForgetting"/> says that the store before it must go too.
    /// </summary>
    public void Clear()
    {
        File.WriteAllText(Pending, "The next update drops the store before it.");
        new UpdateRollback(shop).End();
        foreach (string folder in new[] { _folder, shop.Removed }.Where(Directory.Exists))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Removes the earlier updates whose files differ from those of the newest and are not to be kept.</summary>
    /// <param name="isUnwanted">Asked once for each such file: its name, and the path of its contents.</param>
    public void Drop(Func<string, string, bool> isUnwanted)
    {
        IReadOnlyList<HistoryEntry> entries = Entries;
        HashSet<string> newest = [.. entries.Take(1).SelectMany(e => e.Files.Values)];
        HashSet<string> unwanted = [.. entries.Skip(1).SelectMany(e => e.Files).Where(f => !newest.Contains(f.Value)).DistinctBy(f => f.Value).Where(f => isUnwanted(f.Key, Path.Combine(Contents, f.Value))).Select(f => f.Value)];
        foreach (HistoryEntry old in entries.Where(e => e.Files.Values.Any(unwanted.Contains)))
        {
            File.Delete(ManifestOf(old));
        }

        Prune();
    }

    private string ManifestOf(HistoryEntry entry) => Path.Combine(_folder, entry.Number.ToString("00000", CultureInfo.InvariantCulture) + ".json");

    private void Prune()
    {
        IReadOnlyList<HistoryEntry> entries = Entries;
        foreach (HistoryEntry old in entries.Skip(Most))
        {
            File.Delete(ManifestOf(old));
        }

        HashSet<string> used = [.. entries.Take(Most).SelectMany(e => e.Files.Values)];
        foreach (string content in (Directory.Exists(Contents) ? Directory.EnumerateFiles(Contents) : []).Where(f => !used.Contains(Path.GetFileName(f))).ToList())
        {
            File.Delete(content);
        }
    }
}
