namespace PartsSignal.Pipeline.Understanding;

/// <summary>Whether the cells of a column can be what a field wants.</summary>
internal static class ContentFit
{
    private const double Unknown = 0.9;

    /// <summary>Weight of the cells' evidence: above 1 they speak for it, 0 they rule it out, a column without cells neither.</summary>
    public static double Score(string content, ColumnProfile column) => column.Filled == 0 ? Unknown : content switch
    {
        "date" => column.DateShare >= 0.8 ? 1.1 : column.DateShare >= 0.4 ? 0.8 : 0,
        "money" or "number" => column.NumberShare >= 0.8 ? 1.05 : column.NumberShare >= 0.4 ? 0.8 : 0,
        "count" => column.WholeShare >= 0.8 ? 1.05 : column.WholeShare >= 0.4 ? 0.8 : 0,
        "duration" => column.DurationShare >= 0.8 ? 1.05 : column.DurationShare >= 0.4 ? 0.8 : 0,
        "yesno" => column.FlagShare >= 0.8 ? 1.1 : column.Distinct.Count <= 4 ? 0.9 : 0,
        "email" => column.EmailShare >= 0.5 ? 1.2 : 0,
        "phone" => column.PhoneShare >= 0.5 ? 1.2 : column.PhoneShare >= 0.2 ? 0.9 : 0,
        "code" => column.DateShare >= 0.8 ? 0 : column.CodeShare >= 0.5 ? 1.05 : column.TextShare >= 0.5 ? 0.3 : 0.9,
        "text" => column.DateShare >= 0.5 || column.NumberShare >= 0.8 ? 0 : column.TextShare >= 0.3 ? 1.1 : 1,
        "word" => column.DateShare >= 0.5 ? 0 : 1,
        _ => 1,
    };

    /// <summary>What the cells are, in words.</summary>
    public static string Describe(ColumnProfile column) =>
        column.Filled == 0 ? "the column is empty"
        : column.EmailShare >= 0.5 ? "the cells are e-mail addresses"
        : column.DateShare >= 0.8 ? "the cells are dates"
        : column.PhoneShare >= 0.5 ? "the cells are phone numbers"
        : column.NumberShare >= 0.8 ? "the cells are numbers"
        : column.TextShare >= 0.3 ? "the cells are free text"
        : column.CodeShare >= 0.5 ? "the cells are codes"
        : column.ManyDistinct ? "the cells are words"
        : column.Distinct.Count == 1 ? "every cell is the same word" : $"the cells are {column.Distinct.Count} different words";
}
