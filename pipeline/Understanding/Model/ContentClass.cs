using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>What the cells of a field are, roughly.</summary>
internal enum ContentClass
{
    /// <summary>Days.</summary>
    Date,

    /// <summary>Amounts and counts.</summary>
    Number,

    /// <summary>Letters and digits that name one thing.</summary>
    Code,

    /// <summary>Sentences, or several words.</summary>
    Text,

    /// <summary>One of some words or names.</summary>
    Word,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Known by its marks: e-mail, phone.</summary>
    Mark,
}

/// <summary>What the cells of each field are.</summary>
internal static class ContentClasses
{
    private static readonly Dictionary<string, ContentClass> ByField = new[]
    {
        (ContentClass.Date, "opened_on closed_on updated_on purchased_on ordered_on received_on effective_on first_made last_made made_on installed_on removed_on counted_on"),
        (ContentClass.Number, "age_years visits labour quantity price unit_cost returned_quantity returnable_days warranty_days on_hand"),
        (ContentClass.Code, "job_id order_id part other_part old_part new_part alias model serial error_code model_family"),
        (ContentClass.Text, "complaint description parts_list address return_reason"),
        (ContentClass.Word, "technician van customer_name customer_kind appliance_type brand outcome supplier component size_class kind"),
        (ContentClass.Flag, "from_van"),
        (ContentClass.Mark, "phone email"),
    }.SelectMany(c => c.Item2.Split(' ').Select(f => (Field: f, Class: c.Item1))).ToDictionary(c => c.Field, c => c.Class, StringComparer.Ordinal);

    /// <summary>Class of a field.</summary>
    public static ContentClass Of(string field) => ByField.GetValueOrDefault(field, ContentClass.Word);

    /// <summary>Share of a column's cells that are what the field's are, 0 to 1.</summary>
    public static double Fit(string field, ColumnSample column) => column.Filled == 0 ? 0 : Of(field) switch
    {
        ContentClass.Date => Math.Max(column.DateShare, field is "made_on" or "installed_on" or "removed_on" or "first_made" or "last_made" ? Share(column, IsYear) : 0),
        ContentClass.Number => column.NumberShare,
        ContentClass.Code => Share(column, c => c.Any(char.IsAsciiDigit) && c.Count(x => x == ' ') <= 1) * (1 - column.DateShare),
        ContentClass.Text => Share(column, c => c.Contains(' ')) * (1 - column.DateShare),
        ContentClass.Flag => column.Distinct <= 4 ? 1 : 0,
        ContentClass.Mark => field == "email" ? Share(column, c => c.Contains('@')) : Share(column, c => c.Count(char.IsAsciiDigit) is >= 7 and <= 15),
        _ => Share(column, c => c.Any(char.IsLetter)) * (1 - column.DateShare),
    };

    private static bool IsYear(string cell) => cell.Length == 4 && (cell.StartsWith("19", StringComparison.Ordinal) || cell.StartsWith("20", StringComparison.Ordinal));

    private static double Share(ColumnSample column, Func<string, bool> holds) => (double)column.Texts.Count(holds) / column.Filled;
}
