using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.EndToEnd.Tests.Privacy;

/// <summary>Every text that an output folder holds, whatever the form of its file; only the rejects may hold rows as they were.</summary>
internal static partial class OutputTexts
{
    /// <summary>Files of a folder, each with all it says: Parquet by its cells, workbooks by their parts, the rest as it is and with its escapes undone.</summary>
    public static IEnumerable<(string File, string Text)> Of(string output)
    {
        string rejects = Path.Combine(output, "rejects") + Path.DirectorySeparatorChar;
        using var database = Database.Open(new DatabaseOptions { Threads = 1, HoldsLittle = true });
        foreach (string file in Directory.EnumerateFiles(output, "*", SearchOption.AllDirectories).Where(f => !f.StartsWith(rejects, StringComparison.Ordinal)))
        {
            yield return (Path.GetRelativePath(output, file), Path.GetRelativePath(output, file) + "\n" + Read(database, file));
        }
    }

    private static string Read(Database database, string file)
    {
        if (file.EndsWith(".parquet", StringComparison.Ordinal))
        {
            return Cells(database, file);
        }

        byte[] bytes = File.ReadAllBytes(file);
        if (file.EndsWith(".csv", StringComparison.Ordinal))
        {
            // Numbers of two cells are not one number.
            return WithTabs(Plain(bytes));
        }

        return bytes.AsSpan().StartsWith("PK"u8) ? string.Join('\n', Parts(bytes).Select(Plain)) : Plain(bytes);
    }

    // A comma outside quotation marks ends a cell.
    private static string WithTabs(string csv)
    {
        bool quoted = false;
        return string.Create(csv.Length, csv, (text, from) =>
        {
            for (int i = 0; i < from.Length; i++)
            {
                quoted ^= from[i] == '"';
                text[i] = from[i] == ',' && !quoted ? '\t' : from[i];
            }
        });
    }

    private static string Cells(Database database, string file) =>
        string.Join('\n', database.Query(
            $"from read_parquet({Database.Literal(file)}) select cast(columns(*) as varchar)",
            r => string.Join('\t', Enumerable.Range(0, r.FieldCount).Select(i => r.IsDBNull(i) ? "" : r.GetString(i)))));

    private static IEnumerable<byte[]> Parts(byte[] zip)
    {
        using var archive = new ZipArchive(new MemoryStream(zip));
        foreach (ZipArchiveEntry entry in archive.Entries)
        {
            using Stream part = entry.Open();
            using var copy = new MemoryStream();
            part.CopyTo(copy);
            yield return copy.ToArray();
        }
    }

    private static string Plain(byte[] bytes)
    {
        string text = Encoding.UTF8.GetString(bytes);
        string unescaped = Escape().Replace(text, m => ((char)Convert.ToInt32(m.Groups[1].Value, 16)).ToString());
        return WebUtility.HtmlDecode(unescaped);
    }

    [GeneratedRegex(@"\\u([0-9a-fA-F]{4})")]
    private static partial Regex Escape();
}
