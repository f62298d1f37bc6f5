using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>How the shop writes dates and amounts, where its tables agree: it holds for a table whose own cells leave it open.</summary>
/// <param name="DateOrder">dmy or mdy; null: they say nothing, or both.</param>
/// <param name="NumberStyle">point or comma; null: they say nothing, or both.</param>
internal sealed record ShopStyles(string? DateOrder, string? NumberStyle)
{
    private static readonly string[] AmountFields = ["price", "unit_cost", "age_years"];

    /// <summary>What the maps agree on.</summary>
    public static ShopStyles Of(IEnumerable<SourceMap> maps)
    {
        string[] orders = [.. maps.Select(m => m.DateOrder).OfType<string>().Distinct()];
        string[] styles = [.. maps.Select(m => m.NumberStyle).OfType<string>().Distinct()];
        return new ShopStyles(orders.Length == 1 ? orders[0] : null, styles.Length == 1 ? styles[0] : null);
    }

    /// <summary>The columns of a table that are read as dates.</summary>
    public static ColumnProfile[] Dates(SourceMap map, IReadOnlyList<ColumnProfile> columns)
    {
        HashSet<string> dates = [.. map.Columns.Where(g => ContentFits.ClassOf(g.Key) is ContentClass.Date or ContentClass.Year).SelectMany(g => g.Value)];
        return [.. columns.Where(p => dates.Contains(p.Name))];
    }

    /// <summary>The columns of a table that are read as amounts.</summary>
    public static ColumnProfile[] Amounts(SourceMap map, IReadOnlyList<ColumnProfile> columns)
    {
        HashSet<string> amounts = [.. map.PartGroups.Select(g => g.GetValueOrDefault("price")).OfType<string>(), .. AmountFields.Where(map.Columns.ContainsKey).SelectMany(a => map.Columns[a])];
        return [.. columns.Where(p => amounts.Contains(p.Name))];
    }

    /// <summary>The order that most dates demand; null: none demands one.</summary>
    public static string? OrderOf(ColumnProfile[] dates)
    {
        int day = dates.Sum(d => d.Dates.DayFirst);
        int month = dates.Sum(d => d.Dates.MonthFirst);
        return day == 0 && month == 0 ? null : day >= month ? "dmy" : "mdy";
    }

    /// <summary>The decimal mark that most amounts demand; null: none demands one.</summary>
    public static string? StyleOf(ColumnProfile[] amounts)
    {
        int point = amounts.Sum(a => a.Numbers.Point);
        int comma = amounts.Sum(a => a.Numbers.Comma);
        return point == 0 && comma == 0 ? null : comma > point ? "comma" : "point";
    }
}
