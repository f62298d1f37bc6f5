using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Draws an office's habits; combinations that no office could work with are left out.</summary>
internal static class DialectPicker
{
    private static readonly string[] AnyDates = ["yyyy-MM-dd", "dd.MM.yyyy", "dd/MM/yyyy", "dd-MM-yyyy", "yyyyMMdd", "yyyy/MM/dd", "yyyy-MM-dd HH:mm", "yyyy-MM-ddTHH:mm:ss"];
    private static readonly string[] EnglishDates = ["MM/dd/yyyy", "M/d/yyyy", "MM/dd/yy", "dd-MMM-yyyy", "d MMM yyyy", "yyyy-MM-dd", "dd/MM/yyyy"];
    private static readonly string[] GermanicDates = ["dd.MM.yyyy", "dd.MM.yy", "d.M.yyyy", "dd.MM.yyyy HH:mm"];

    public static Dialect Pick(long seed)
    {
        Dice dice = Dice.For(seed, "dialect");
        string trade = dice.Chance(0.3) ? "appliance" : dice.Pick(DialectWords.Trades).Name;
        string[] spoken = [.. DialectWords.Faults.Where(f => f.Trade == trade).Select(f => f.Language).Distinct(StringComparer.Ordinal)];
        string cells = dice.Chance(0.3) ? "en" : dice.Pick(spoken);
        string language = dice.Chance(0.08) ? dice.Pick(DialectWords.Languages) : cells;
        JobKey key = (JobKey)dice.Weighted([0.45, 0.13, 0.14, 0.1, 0.18]);
        bool unique = key is JobKey.Plain or JobKey.Prefixed;
        PartLayout parts = unique ? (PartLayout)dice.Weighted([0.4, 0.2, 0.18, 0.19, 0.03]) : dice.Chance(0.5) ? PartLayout.Groups : PartLayout.List;
        PartNaming naming = (PartNaming)dice.Weighted([0.3, 0.2, 0.35, 0.15]);
        var end = (Ending)dice.Weighted([0.12, 0.38, 0.2, 0.14, 0.16]);
        if (parts == PartLayout.List && naming == PartNaming.Both)
        {
            naming = PartNaming.Number;
        }

        if (parts == PartLayout.None && end is Ending.Closed or Ending.ClosedAndStatus)
        {
            end = Ending.ClosedAndOutcome;
        }

        var style = (HeaderStyle)dice.Weighted([0.08, 0.16, 0.09, 0.06, 0.07, 0.06, 0.06, 0.12, 0.04, 0.04, 0.05, 0.03, 0.03, 0.05, 0.04, 0.01, 0.02]);
        var container = (Container)dice.Weighted([0.6, 0.2, 0.1, 0.1]);
        bool comma = language != "en" && dice.Chance(0.75);
        char separator = comma ? dice.Pick<char>([';', ';', '\t', '|']) : dice.Pick<char>([',', ',', ',', ';', '\t', '|']);
        return new Dialect
        {
            Language = language,
            CellLanguage = cells,
            Trade = trade,
            Style = style,
            Prefix = dice.Pick(["x_", "tbl_", "so.", "WO_", "c", "fld"]),
            AsciiOnly = dice.Chance(0.25) || style == HeaderStyle.UpperSnake,
            UnitsInHeaders = dice.Chance(0.3),
            GroupMark = dice.Pick([" {0}", "_{0}", " #{0}", "{0}", " ({0})", ".{0}"]),
            Parts = parts,
            Naming = naming,
            ListSeparator = dice.Pick([", ", "; ", " + ", " / ", "\n"]),
            End = end,
            Key = key,
            ByAsset = dice.Chance(0.15),
            OutcomeCodes = end == Ending.ClosedAndOutcome && dice.Chance(0.2),
            TypeCodes = dice.Chance(0.1),
            YearFiles = container == Container.YearlyWorkbook || dice.Chance(0.2),
            StackYears = dice.Chance(0.07),
            Container = container,
            Dates = (WorkbookDates)dice.Weighted([0.6, 0.3, 0.1]),
            Cover = dice.Chance(0.5),
            Separator = separator,
            Encoding = dice.Pick(["utf-8", "utf-8", "utf-8-bom", "utf-8-bom", "windows", "windows", "utf-16"]),
            QuoteAll = dice.Chance(0.2),
            NewLine = dice.Chance(0.6) ? "\r\n" : "\n",
            TitleRows = dice.Weighted([0.65, 0.15, 0.15, 0.05]),
            BlankAfterTitle = dice.Chance(0.5),
            Footer = (Footer)dice.Weighted([0.75, 0.15, 0.1]),
            RepeatHeaderEvery = dice.Chance(0.06) ? dice.Between(40, 60) : 0,
            TrimRowEnds = dice.Chance(0.06),
            DateFormat = dice.Pick(dice.Chance(0.3) ? AnyDates : language == "en" ? EnglishDates : GermanicDates),
            DecimalComma = comma,
            Currency = dice.Chance(0.6) ? "" : language == "pl" ? "zł" : language == "en" ? dice.Pick(["$", "£", "USD"]) : dice.Pick(["€", "EUR"]),
            CurrencyFirst = language == "en",
            Missing = dice.Pick(["", "", "", "", "", "-", "n/a", "?", "NULL"]),
            JunkShare = dice.Chance(0.15) ? 0 : 0.1 + (0.35 * dice.Uniform()),
            WideVans = dice.Chance(0.4),
            MonthsAsColumns = dice.Chance(0.2),
            MadeFormat = dice.Pick(["day", "year", "yyyy-MM", "MM/yyyy"]),
        };
    }
}
