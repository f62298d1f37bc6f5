using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Decides what holds for a whole file: the map says, else the shop's setting, else the file's own cells.</summary>
internal sealed class StyleVote
{
    private const int FewestRows = 5_000;
    private const int Rows = 20_000;
    private const int FewestCountedDays = 3;
    private const double LeastCountedDays = 0.05;
    private static readonly string[] DateFields = Names(Cleaner.Day, Cleaner.ApproximateDay, Cleaner.Time, Cleaner.BuildDate, Cleaner.FirstMade, Cleaner.LastMade);
    private static readonly string[] AmountFields = Names(Cleaner.Money, Cleaner.Years);
    private readonly DateOrderVote _dates = new();
    private readonly NumberStyleVote _numbers = new();
    private readonly Dictionary<int, (int Counted, int All)> _days = [];
    private (int Counted, int All) _lists;
    private readonly CarriedDayVote _calls = new();
    private bool _minutes;

    private StyleVote()
    {
    }

    /// <summary>Decides, and says what was assumed.</summary>
    /// <param name="table">The table, to be read for the vote; closed by the caller.</param>
    /// <param name="map">The source's map.</param>
    /// <param name="settings">The shop's settings.</param>
    /// <param name="sourceFile">Name for the remarks.</param>
    /// <param name="sample">Takes the first rows that are read, or null if nobody needs them.</param>
    /// <param name="census">Counts the words of the first rows, or null likewise.</param>
    public static (FileStyle Style, IReadOnlyList<string> Remarks) Decide(OpenedTable table, SourceMap map, ShopSettings settings, string sourceFile, RowSample? sample = null, WordCensus? census = null)
    {
        var vote = new StyleVote();
        var fields = new FieldMap(sourceFile, map, table.Header);
        DateOrder? order = OrderOf(map.DateOrder) ?? OrderOf(settings.DateOrder);
        NumberStyle? style = StyleOf(map.NumberStyle) ?? StyleOf(settings.NumberStyle);
        MappedField labour = fields.Field("labour");
        bool labourOpen = labour.IsMapped && !Says(map, "min", "hour", "hrs");
        vote.Count(table.Reader, fields, labour, CallDay(fields, map), sample, census, (order is null, style is null, labourOpen));
        var remarks = new List<string>();
        if (order is null)
        {
            order = vote._dates.Decide();
            if (order is null && vote._dates.Ambiguous > 0)
            {
                remarks.Add("Dates such as 03/08 may be day-first or month-first and none has a day over 12; read day-first. Set dateOrder in shop.json.");
            }
            else if (vote._dates.IsMixed)
            {
                remarks.Add($"Some dates are day-first and some month-first; read {(order == DateOrder.MonthFirst ? "month" : "day")}-first as most demand, the others are rejects.");
            }
        }

        if (style is null && vote._numbers.IsMixed)
        {
            remarks.Add("Amounts with a decimal point and with a decimal comma; read as most demand. Set numberStyle in shop.json.");
        }

        style ??= vote._numbers.Decide();
        bool counted = vote._days.Values.Any(d => d.Counted >= FewestCountedDays && d.Counted >= LeastCountedDays * d.All);
        if (counted)
        {
            remarks.Add("Some dates are plain spreadsheet day numbers, such as 45495 for 2024-07-22; they are read as those days.");
        }

        bool hours = labour.IsMapped && !vote._minutes && !Says(map, "min");
        bool carries = vote._calls.Decide(order ?? DateOrder.DayFirst);
        if (carries)
        {
            remarks.Add(CarriedDayVote.Remark);
        }

        return (new FileStyle(order ?? DateOrder.DayFirst, style ?? NumberStyle.Point, hours || Says(map, "hour", "hrs"), counted, vote._lists.Counted * 2 > vote._lists.All, carries ? CallDay(fields, map) : -1), remarks);
    }

    private static int CallDay(FieldMap fields, SourceMap map) =>
        map.Kind == "jobs" && map.Columns.ContainsKey("opened_on") && fields.Field("opened_on").Columns is [var one] ? one : -1;

    private void Count(TableReader table, FieldMap fields, MappedField labour, int callDay, RowSample? sample, WordCensus? census, (bool Dates, bool Numbers, bool Labour) open)
    {
        int[] dates = [.. DateFields.SelectMany(f => fields.Field(f).Columns)];
        int[] amounts = [.. AmountFields.SelectMany(f => fields.Field(f).Columns), .. Enumerable.Range(0, fields.PartGroups).SelectMany(g => fields.Field("price", g).Columns)];
        int[] lists = fields.Field("parts_list").Columns;
        for (int n = 0; table.Read(); n++)
        {
            sample?.Take(table);
            census?.Take(table);
            bool datesSettled = !open.Dates || _dates.IsDecided;
            bool allSettled = datesSettled && (!open.Numbers || amounts.Length == 0 || _numbers.Decide() is not null) && (!open.Labour || _minutes);
            if ((n >= FewestRows && allSettled) || (n >= Rows && (datesSettled || _dates.Ambiguous == 0)))
            {
                return;
            }

            if (callDay >= 0 && !table.Row.IsBlank)
            {
                _calls.Add(table.Row[callDay]);
            }

            foreach (int column in dates)
            {
                _dates.Add(table.Row[column]);
                AddDay(column, table.Row[column]);
            }

            foreach (int column in amounts)
            {
                if (table.Row.Form(column) == CellForm.Text)
                {
                    _numbers.Add(table.Row[column].Trim());
                }
            }

            foreach (int column in lists)
            {
                ReadOnlySpan<char> cell = table.Row[column];
                _lists = EmptyMark.Is(cell) ? _lists : (_lists.Counted + (PartsListText.MayLeadWithCount(cell) ? 1 : 0), _lists.All + 1);
            }

            foreach (int column in labour.Columns)
            {
                _minutes |= DurationText.MustBeMinutes(table.Row[column]);
            }
        }
    }

    private void AddDay(int column, ReadOnlySpan<char> cell)
    {
        if (!EmptyMark.Is(cell))
        {
            (int counted, int all) = _days.GetValueOrDefault(column);
            _days[column] = (counted + (SpreadsheetDay.TryRead(cell, out _) ? 1 : 0), all + 1);
        }
    }

    private static string[] Names(params ReadOnlySpan<Cleaner> cleaners)
    {
        Cleaner[] wanted = cleaners.ToArray();
        return [.. FieldCatalog.All.Where(f => wanted.Contains(f.Cleaner)).Select(f => f.Name).Distinct(StringComparer.Ordinal)];
    }

    private static bool Says(SourceMap map, params ReadOnlySpan<string> words)
    {
        if (map.Columns.TryGetValue("labour", out IReadOnlyList<string>? headers))
        {
            foreach (string word in words)
            {
                if (headers.Any(h => h.Contains(word, StringComparison.OrdinalIgnoreCase)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static DateOrder? OrderOf(string? name) => name switch
    {
        "dmy" => DateOrder.DayFirst,
        "mdy" => DateOrder.MonthFirst,
        "ymd" => DateOrder.YearFirst,
        _ => null,
    };

    private static NumberStyle? StyleOf(string? name) => name switch
    {
        "point" => NumberStyle.Point,
        "comma" => NumberStyle.Comma,
        _ => null,
    };
}

/// <summary>What holds for all cells of one file.</summary>
/// <param name="Dates">Order of dates.</param>
/// <param name="Numbers">Style of amounts.</param>
/// <param name="LabourInHours">What a working time without a unit is: hours, else minutes.</param>
/// <param name="CountsDays">True where dates may be the plain numbers that a spreadsheet counts days by.</param>
/// <param name="LeadsWithCounts">True where most lists of parts begin with a count.</param>
/// <param name="CarriedDay">The column of a day that only the first row of each day has; -1: every row has its own.</param>
internal sealed record FileStyle(DateOrder Dates, NumberStyle Numbers, bool LabourInHours, bool CountsDays, bool LeadsWithCounts, int CarriedDay = -1);
