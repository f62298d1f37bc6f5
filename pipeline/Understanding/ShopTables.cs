using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>Files of a folder that may be tables of the shop's.</summary>
internal static class ShopTables
{
    private static readonly string[] Endings = [".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xlsb", ".xls", ".ods", ".gz", ".zip"];

    // What the shop may put there for the program, and what the program itself writes.
    private static readonly string[] Ours = ["serial-codes.csv", "complaint-words.csv", "components.csv", "appliance-words.csv", "outcome-words.csv"];
    private static readonly string[] OurBeginnings = ["checks", "review-", "data-faults", "rejects"];

    /// <summary>The files, by name.</summary>
    public static IReadOnlyList<InputFile> In(string folder, ReadingLimits limits) =>
        [.. new InputFiles(folder, limits).All.Where(f => (!f.Name.Contains('/') || f.Entry is not null) && IsTable(Path.GetFileName(f.Name)))];

    /// <summary>Says that a folder holds none, and what to do.</summary>
    public static BadInputException None(string folder) =>
        new($"{folder}: there is no spreadsheet or CSV file in this folder. Put your job log, parts orders and price lists there, as they are.");

    private static bool IsTable(string name) =>
        Endings.Contains(Path.GetExtension(name), StringComparer.OrdinalIgnoreCase)
        && !Ours.Contains(name, StringComparer.OrdinalIgnoreCase)
        && !OurBeginnings.Any(b => name.StartsWith(b, StringComparison.OrdinalIgnoreCase));
}
