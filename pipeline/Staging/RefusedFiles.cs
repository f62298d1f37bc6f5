using System.Security.Cryptography;
using System.Text;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Files that could not be read at all: a row of the rejects each, and a list for people.</summary>
internal static class RefusedFiles
{
    /// <summary>Name of the list in the rejects folder.</summary>
    public const string Name = "refused-files.csv";

    /// <summary>A staged file without rows, and its one reject on line 0.</summary>
    public static async Task<StagedFile> StageAsync(SourceFile source, RowFault fault, string stageFolder, CancellationToken cancellation)
    {
        string name = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{source.Order}/{source.File.Name}")))[..16];
        string folder = Directory.CreateDirectory(Path.Combine(stageFolder, "refused-" + name)).FullName;
        var table = new RejectTable(folder);
        await using (table.ConfigureAwait(false))
        {
            await table.AddAsync(source.File.Name, 0, fault, cancellation).ConfigureAwait(false);
            return new StagedFile
            {
                SourceFile = source.File.Name,
                Kind = source.Map.Kind,
                ContentHash = "",
                SourceOrder = source.Order,
                Folder = folder,
                Tables = new Dictionary<string, string>(),
                Rejects = await table.CompleteAsync(cancellation).ConfigureAwait(false),
                RawRejects = null,
                RowsRead = 1,
                Rejected = 1,
                Footers = 0,
                RepeatedHeaders = 0,
                Titles = 0,
                OnePartPerRow = false,
                Remarks = [],
                UnreadCells = [],
                Refused = fault,
            };
        }
    }

    /// <summary>Writes the list, or removes the one of an earlier load.</summary>
    public static void List(IReadOnlyCollection<StagedFile> files, string rejects)
    {
        string path = Path.Combine(rejects, Name);
        StagedFile[] refused = [.. files.Where(f => f.Refused is not null)];
        if (refused.Length == 0)
        {
            if (File.Exists(path))
            {
                File.Delete(path);
            }

            return;
        }

        Directory.CreateDirectory(rejects);
        File.WriteAllLines(path, refused
            .Select(f => new object?[] { f.SourceFile, f.Refused!.Code, f.Refused.Message, f.Refused.Suggestion })
            .Prepend(["file", "reason", "message", "suggestion"])
            .Select(cells => string.Join(',', cells.Select(TablePrinter.CsvCell))));
    }
}
