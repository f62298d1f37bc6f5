namespace PartsSignal.SampleShop.World;

/// <summary>One of the tables that describe the world: semicolons, a header, no quoting.</summary>
internal sealed class DataTable
{
    private readonly Dictionary<string, int> _columns = [];

    private DataTable(string[] header, IReadOnlyList<string[]> rows)
    {
        for (int i = 0; i < header.Length; i++)
        {
            _columns[header[i]] = i;
        }

        Rows = rows;
    }

    public IReadOnlyList<string[]> Rows { get; }

    public static DataTable Read(string name)
    {
        using Stream stream = typeof(DataTable).Assembly.GetManifestResourceStream($"World/{name}")
            ?? throw new ArgumentException($"no world table {name}", nameof(name));
        using var reader = new StreamReader(stream);
        string[] lines = reader.ReadToEnd().ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return new DataTable(lines[0].Split(';'), [.. lines.Skip(1).Select(l => l.Split(';'))]);
    }

    public string Text(string[] row, string column) => row[_columns[column]];

    public double Number(string[] row, string column) =>
        double.Parse(Text(row, column), System.Globalization.CultureInfo.InvariantCulture);

    public int Whole(string[] row, string column) => (int)Number(row, column);

    /// <summary>Cells such as <c>leak:0.6|noise:0.4</c>.</summary>
    public IReadOnlyList<(string Name, double Share)> Shares(string[] row, string column) =>
        [.. Text(row, column).Split('|', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split(':'))
            .Select(p => (p[0], double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture)))];
}
