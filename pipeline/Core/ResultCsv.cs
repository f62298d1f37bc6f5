using CsvHelper;

namespace PartsSignal.Pipeline.Core;

/// <summary>Reads a small result table back from its CSV file.</summary>
internal static class ResultCsv
{
    /// <summary>The rows in the order of the file; empty if there is no such file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="row">Makes a row of the line that the reader stands on.</param>
    public static IReadOnlyList<T> Read<T>(string path, Func<CsvReader, T> row)
    {
        var rows = new List<T>();
        if (!File.Exists(path))
        {
            return rows;
        }

        using var csv = CsvReader.FromFile(path, new CsvReaderOptions { Separator = ',' });
        csv.ReadHeader();
        while (csv.Read())
        {
            rows.Add(row(csv));
        }

        return rows;
    }
}
