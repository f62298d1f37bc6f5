using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Reading;

/// <summary>What can be wrong with a file as a whole.</summary>
internal static class FileFaults
{
    public static readonly RowFault Gone = new(null, ReasonCode.FileGone, "The file was there when the folder was listed and is not any more.", "Put it back, or take it out of shop.json.");

    public static readonly RowFault Unreadable = new(null, ReasonCode.UnreadableFile, "The system does not let the file be read.", "Close the program that holds it, or allow yourself to read it.");

    public static readonly RowFault Changed = new(null, ReasonCode.FileChanged, "The file was changed while it was read.", "Load again once no program writes to it.");

    public static readonly RowFault Empty = new(null, ReasonCode.EmptyFile, "The file is empty.", "Export it again, or remove it.");

    public static readonly RowFault Link = new(null, ReasonCode.LeadsElsewhere, "The file is a link to another place.", "Copy the file itself into the input folder.");

    public static readonly RowFault EntryPath = new(null, ReasonCode.LeadsElsewhere, "The zip holds an entry whose path leads elsewhere.", "Pack it again without folders.");

    public static RowFault BrokenPacking(string why) => new(null, ReasonCode.BrokenFile, $"The packed data is broken ({why.TrimEnd('.')}).", "Pack it again, or get a fresh copy.");

    public static RowFault BrokenWorkbook(string why) => new(null, ReasonCode.BrokenFile, $"The workbook cannot be read ({why.TrimEnd('.')}).", "Open it in a spreadsheet and save it again.");

    public static readonly RowFault Protected = new(null, ReasonCode.BrokenFile, "The workbook has a password.", "Save it without one and add it again.");

    public static readonly RowFault NotText = new(null, ReasonCode.BrokenFile, "The file holds no text: it is a picture, a document or a workbook under another name.", "Save the table as a workbook (.xlsx) or a CSV file.");

    public static RowFault OtherWorkbook(string form) => new(null, ReasonCode.BrokenFile, $"The file is {form}, a form that is not read.", "Open it in a spreadsheet and save it as .xlsx or .csv.");

    public static readonly RowFault Zeros = new(null, ReasonCode.BrokenFile, "The file holds nothing but zero bytes, as after a power cut.", "Get a fresh copy.");

    public static RowFault TooLarge(string what, string limit) => new(null, ReasonCode.TooLarge, what, $"Raise limits.{limit} in shop.json if it is meant.");
}
