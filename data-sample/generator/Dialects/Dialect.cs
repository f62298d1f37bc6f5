namespace PartsSignal.SampleShop.Dialects;

internal enum HeaderStyle { Plain, Capital, Title, Upper, Lower, Camel, Pascal, Snake, UpperSnake, Kebab, Prefixed, Brackets, Compact, Abbreviated, AbbreviatedUpper, Numbered, Colon }

internal enum PartLayout { Child, Rows, Groups, List, None }

internal enum PartNaming { Number, Name, Both, NumberAndNameInOneCell }

internal enum Ending { Closed, ClosedAndOutcome, ClosedAndStatus, Outcome, Status }

internal enum JobKey { Plain, Prefixed, PerYear, PerTechnician, Missing }

internal enum Container { TextFiles, OneWorkbook, YearlyWorkbook, WorkbookEach }

internal enum WorkbookDates { Styled, Text, BareNumber }

internal enum Footer { None, Total, Note }

/// <summary>How one shop's office writes its files.</summary>
internal sealed record Dialect
{
    public required string Language { get; init; }

    /// <summary>Language of the cells; mostly that of the headers.</summary>
    public required string CellLanguage { get; init; }

    public required string Trade { get; init; }

    public required HeaderStyle Style { get; init; }

    public required string Prefix { get; init; }

    public required bool AsciiOnly { get; init; }

    public required bool UnitsInHeaders { get; init; }

    public required string GroupMark { get; init; }

    public required PartLayout Parts { get; init; }

    public required PartNaming Naming { get; init; }

    public required string ListSeparator { get; init; }

    public required Ending End { get; init; }

    public required JobKey Key { get; init; }

    public required bool ByAsset { get; init; }

    public required bool OutcomeCodes { get; init; }

    public required bool TypeCodes { get; init; }

    public required bool YearFiles { get; init; }

    /// <summary>The years stand below one another in one table, each under a line that names it.</summary>
    public required bool StackYears { get; init; }

    public required Container Container { get; init; }

    public required WorkbookDates Dates { get; init; }

    public required bool Cover { get; init; }

    public required char Separator { get; init; }

    public required string Encoding { get; init; }

    public required bool QuoteAll { get; init; }

    public required string NewLine { get; init; }

    public required int TitleRows { get; init; }

    public required bool BlankAfterTitle { get; init; }

    public required Footer Footer { get; init; }

    public required int RepeatHeaderEvery { get; init; }

    public required bool TrimRowEnds { get; init; }

    public required string DateFormat { get; init; }

    public required bool DecimalComma { get; init; }

    public required string Currency { get; init; }

    public required bool CurrencyFirst { get; init; }

    public required string Missing { get; init; }

    public required double JunkShare { get; init; }

    public required bool WideVans { get; init; }

    public required bool MonthsAsColumns { get; init; }

    public required string MadeFormat { get; init; }

    /// <summary>One line for truth.json.</summary>
    public string Summary => $"{Language} {Style}, {Trade} in {CellLanguage}, {Container}";
}
