using PartsSignal.Pipeline.Config;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>How many cells of a column are what a class of fields holds.</summary>
internal static class ContentFits
{
    private static readonly Dictionary<string, ContentClass> ByField = FieldCatalog.All.GroupBy(f => f.Name).ToDictionary(g => g.Key, g => g.First().Content, StringComparer.Ordinal);

    /// <summary>Number of classes.</summary>
    public static int Count { get; } = Enum.GetValues<ContentClass>().Length;

    /// <summary>Class of a field.</summary>
    public static ContentClass ClassOf(string field) => ByField.GetValueOrDefault(field, ContentClass.Word);

    /// <summary>Levels by class.</summary>
    public static byte[] Of(ColumnSample column)
    {
        var shares = new double[Count];
        if (column.Filled > 0)
        {
            double undated = 1 - column.DateShare;
            shares[(int)ContentClass.Date] = column.DateShare;
            shares[(int)ContentClass.Year] = Math.Max(column.DateShare, Share(column, IsYear));
            shares[(int)ContentClass.Number] = column.NumberShare;
            shares[(int)ContentClass.Code] = Share(column, c => c.Any(char.IsAsciiDigit) && c.Count(x => x == ' ') <= 1) * undated;
            shares[(int)ContentClass.Text] = Share(column, c => c.Contains(' ')) * undated;
            shares[(int)ContentClass.Word] = Share(column, c => c.Any(char.IsLetter)) * undated;
            shares[(int)ContentClass.Flag] = column.Distinct <= 4 ? 1 : 0;
            shares[(int)ContentClass.Phone] = Share(column, c => c.Count(char.IsAsciiDigit) is >= 7 and <= 15) * undated;
            shares[(int)ContentClass.Email] = Share(column, c => c.Contains('@'));
        }

        return [.. shares.Select(FeatureList.LevelOf)];
    }

    private static bool IsYear(string cell) => cell.Length == 4 && (cell.StartsWith("19", StringComparison.Ordinal) || cell.StartsWith("20", StringComparison.Ordinal));

    private static double Share(ColumnSample column, Func<string, bool> holds) => (double)column.Texts.Count(holds) / column.Filled;
}
