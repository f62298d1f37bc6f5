namespace PartsSignal.Pipeline.Understanding;

/// <summary>What the cells of a field are, roughly.</summary>
internal enum ContentClass
{
    /// <summary>Days.</summary>
    Date,

    /// <summary>Days or years.</summary>
    Year,

    /// <summary>Amounts and counts.</summary>
    Number,

    /// <summary>Letters and digits that name one thing.</summary>
    Code,

    /// <summary>Several words.</summary>
    Text,

    /// <summary>One of some words or names.</summary>
    Word,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Phone numbers.</summary>
    Phone,

    /// <summary>E-mail addresses.</summary>
    Email,
}

/// <summary>How many cells of a column are what a class of fields holds.</summary>
internal static class ContentFits
{
    private static readonly Dictionary<string, ContentClass> ByField = new[]
    {
        (ContentClass.Date, "opened_on closed_on updated_on purchased_on ordered_on received_on effective_on counted_on"),
        (ContentClass.Year, "first_made last_made made_on installed_on removed_on"),
        (ContentClass.Number, "age_years visits labour quantity price unit_cost returned_quantity returnable_days warranty_days on_hand"),
        (ContentClass.Code, "job_id order_id part other_part old_part new_part alias model serial error_code model_family"),
        (ContentClass.Text, "complaint description parts_list address return_reason"),
        (ContentClass.Flag, "from_van warranty"),
        (ContentClass.Phone, "phone"),
        (ContentClass.Email, "email"),
    }.SelectMany(c => c.Item2.Split(' ').Select(f => (Field: f, Class: c.Item1))).ToDictionary(c => c.Field, c => c.Class, StringComparer.Ordinal);

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
