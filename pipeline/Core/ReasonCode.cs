namespace PartsSignal.Pipeline.Core;

/// <summary>Reason codes of refused rows. The codes are stable; <see cref="Meanings"/> explains each.</summary>
internal static class ReasonCode
{
    public const string OpenQuote = "open_quote";
    public const string BadQuoting = "bad_quoting";
    public const string TooFewCells = "too_few_cells";
    public const string TooManyCells = "too_many_cells";
    public const string RowTooLong = "row_too_long";
    public const string BadEncoding = "bad_encoding";
    public const string Missing = "missing";
    public const string BadDate = "bad_date";
    public const string BadNumber = "bad_number";
    public const string OutOfRange = "out_of_range";
    public const string DamagedBySpreadsheet = "damaged_by_spreadsheet";
    public const string FormulaError = "formula_error";
    public const string TextTooLong = "text_too_long";
    public const string SummaryRow = "summary_row";
    public const string NotData = "not_data";
    public const string WrongColumn = "wrong_column";
    public const string UnknownWord = "unknown_word";
    public const string Personal = "personal";
    public const string UnknownJob = "unknown_job";
    public const string BrokenFile = "broken_file";
    public const string UnreadableFile = "unreadable_file";
    public const string FileGone = "file_gone";
    public const string FileChanged = "file_changed";
    public const string EmptyFile = "empty_file";
    public const string TooLarge = "too_large";
    public const string LeadsElsewhere = "leads_elsewhere";

    /// <summary>Codes that refuse a whole file; row counts treat such a file as one row read and rejected.</summary>
    public static readonly IReadOnlySet<string> OfFiles = new HashSet<string>(StringComparer.Ordinal) { BrokenFile, UnreadableFile, FileGone, FileChanged, EmptyFile, TooLarge, LeadsElsewhere };

    /// <summary>Every code with its meaning, in documentation order.</summary>
    public static readonly IReadOnlyList<(string Code, string Meaning)> Meanings =
    [
        (OpenQuote, "a quotation mark is opened and not closed on the row"),
        (BadQuoting, "text follows a closing quotation mark, and the row's cells do not add up"),
        (TooFewCells, "the row has fewer cells than the header, and lacks more than blank cells at its end"),
        (TooManyCells, "the row has more cells than the header, or than the limit"),
        (RowTooLong, "the row is longer than the limit"),
        (BadEncoding, "the row holds bytes that are no text in the file's encoding"),
        (Missing, "a value that the row cannot do without is empty"),
        (BadDate, "a date cannot be read in the file's date order"),
        (BadNumber, "a number or amount cannot be read in the file's number style"),
        (OutOfRange, "a value is readable and impossible"),
        (DamagedBySpreadsheet, "a code was turned into a number or date by a spreadsheet; the original is lost"),
        (FormulaError, "the cell holds a failed formula"),
        (TextTooLong, "a cell is longer than the limit"),
        (SummaryRow, "the row is a total among the data"),
        (NotData, "the line is not data: a title, a repeated header, or a total or a note below the data; it counts neither as read nor as refused"),
        (WrongColumn, "a cell holds an amount or a date where its column never holds one: the cells of the row have moved"),
        (UnknownWord, "a word is in no table; only lesser cells, whose row is loaded without them"),
        (Personal, "a cell held what looks like a person's name, number or address; only lesser cells, whose row is loaded without it"),
        (UnknownJob, "a part line names a job that is in no job log"),
        (BrokenFile, "the whole file: it is damaged"),
        (UnreadableFile, "the whole file: the system does not let it be read"),
        (FileGone, "the whole file: it vanished between listing and reading"),
        (FileChanged, "the whole file: another program changed it while it was read, twice"),
        (EmptyFile, "the whole file: it holds nothing"),
        (TooLarge, "the whole file: it is beyond a limit, which shop.json can raise"),
        (LeadsElsewhere, "the whole file: a link, or an entry of a zip, that leads out of the input folder"),
    ];
}
