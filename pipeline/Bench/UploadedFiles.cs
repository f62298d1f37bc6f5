using Microsoft.AspNetCore.Http;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Copies files a person chose into the shop's folder. The originals are never touched.</summary>
internal static class UploadedFiles
{
    /// <summary>Most bytes of one upload.</summary>
    public const long MostBytes = 1L << 30;

    /// <summary>Most files of one upload.</summary>
    public const int MostFiles = 200;

    private const int LongestName = 120;
    private static readonly string[] Endings = [".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".xlsb", ".gz", ".zip"];

    // What Windows does not allow in a name.
    private static readonly string[] Devices = ["con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9"];

    /// <summary>Copies the files; one of a name that is there already takes its place.</summary>
    /// <returns>How many were copied.</returns>
    /// <exception cref="BadInputException">None was chosen, or one is of a kind that holds no table; none is copied then.</exception>
    public static async Task<int> SaveAsync(IReadOnlyList<IFormFile> files, string folder, CancellationToken cancellation)
    {
        IFormFile[] chosen = [.. files.Where(f => f.FileName.Length > 0)];
        string[] faults =
        [
            .. chosen.Where(f => NameOf(f.FileName) is null).Select(f => $"{Shown(f.FileName)}: this kind of file holds no table. Choose spreadsheets or CSV files."),
            .. chosen.Length > MostFiles ? new[] { $"Too many files at once. Choose {MostFiles} or fewer." } : [],
            .. chosen.Length == 0 ? new[] { "Choose at least one file." } : [],
        ];
        if (faults.Length > 0)
        {
            throw new BadInputException(faults);
        }

        Directory.CreateDirectory(folder);
        foreach (IFormFile file in chosen)
        {
            string path = Path.Combine(folder, NameOf(file.FileName)!);
            FileStream part = File.Create(path + ".part");
            await using (part.ConfigureAwait(false))
            {
                await file.CopyToAsync(part, cancellation).ConfigureAwait(false);
            }

            File.Move(path + ".part", path, overwrite: true);
        }

        return chosen.Length;
    }

    /// <summary>Copies an uploaded file to a temporary folder, hands it to a reader, then deletes the copy.</summary>
    /// <param name="file">The file.</param>
    /// <param name="read">Receives the path of the copy and the file's name.</param>
    /// <param name="cancellation">Cancels the copying.</param>
    /// <exception cref="BadInputException">It is of a kind that holds no table.</exception>
    public static async Task WithCopyAsync(IFormFile file, Action<string, string> read, CancellationToken cancellation)
    {
        string name = NameOf(file.FileName) ?? throw new BadInputException($"{Shown(file.FileName)}: this kind of file holds no table. Choose spreadsheets or CSV files.");
        string folder = Directory.CreateTempSubdirectory("partssignal-").FullName;
        try
        {
            string path = Path.Combine(folder, name);
            FileStream copy = File.Create(path);
            await using (copy.ConfigureAwait(false))
            {
                await file.CopyToAsync(copy, cancellation).ConfigureAwait(false);
            }

            read(path, name);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The name under which a file is kept, or null for a kind that holds no table.</summary>
    /// <param name="given">The name a browser sent; any path in it is dropped.</param>
    public static string? NameOf(string given)
    {
        string last = given.Split('/', '\\')[^1];
        string name = new([.. last.Where(c => !char.IsControl(c) && !"<>:\"|?*".Contains(c, StringComparison.Ordinal))]);
        name = name.Trim(' ', '.');
        string ending = Path.GetExtension(name).ToLowerInvariant();
        string stem = Path.GetFileNameWithoutExtension(name).Trim(' ', '.');
        return stem.Length == 0 || name.Length > LongestName || !Endings.Contains(ending) || Devices.Contains(stem.Split('.')[0].ToLowerInvariant()) ? null : stem + Path.GetExtension(name);
    }

    private static string Shown(string name) => name.Length > LongestName ? name[..LongestName] + "…" : name;
}
