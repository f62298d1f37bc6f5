using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.DateCodes;

/// <summary>
/// Reads the serials of a job log or register whose row also tells a date or an age. Reads only these few columns, and only
/// brands that the shop gives no rule for.
/// </summary>
/// <param name="settings">What <c>shop.json</c> says.</param>
/// <param name="given">The rules that the shop gives.</param>
/// <param name="serials">Takes what is found.</param>
internal sealed class DatedSerialReader(ShopSettings settings, SerialCodes given, DatedSerials serials)
{
    private const int MostBrands = 2_000;
    private const double MostYears = 100;
    private const double DaysPerYear = 365.25;
    private const double MonthsPerYear = 12;

    // A customer may count from the day of purchase.
    private const double YearsInStock = 1;
    private static readonly string[] Kinds = ["jobs", "units"];
    private static readonly string[] Dates = ["made_on", "purchased_on", "installed_on"];
    private static readonly (string Field, double PerYear)[] Ages = [("age_years", 1), ("age_months", MonthsPerYear), ("age_days", DaysPerYear)];
    private readonly Dictionary<string, string?> _brands = new(StringComparer.Ordinal);

    /// <summary>True when the rows of a source may tell a serial, its brand, and a date or an age.</summary>
    public static bool CanDate(SourceFile source)
    {
        SourceMap map = source.Map;
        return source.Mends is null && Kinds.Contains(map.Kind) && Has("serial") && Has("brand")
            && (Dates.Any(Has) || (Has(DayOf(map.Kind)) && Ages.Any(a => Has(a.Field))));

        bool Has(string field) => map.Columns.ContainsKey(field) || map.Fixed.ContainsKey(field);
    }

    /// <summary>Reads one file. A file that cannot be read is left out: staging says why.</summary>
    /// <param name="source">The file.</param>
    /// <param name="scan">Its scan.</param>
    /// <param name="cancellation">Stops.</param>
    public void Read(SourceFile source, ContentScan scan, CancellationToken cancellation)
    {
        try
        {
            using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, settings.Limits);
            ReadRows(source, table, Style(source, scan), cancellation);
        }
        catch (BadInputException)
        {
            // Rows read so far are good evidence.
        }
    }

    private FileStyle Style(SourceFile source, ContentScan scan)
    {
        using OpenedTable table = OpenedTable.Open(source.File, scan, source.Map, settings.Limits);
        return StyleVote.Decide(table, source.Map, settings, source.File.Name).Style;
    }

    private void ReadRows(SourceFile source, OpenedTable table, FileStyle style, CancellationToken cancellation)
    {
        var fields = new FieldMap(source.File.Name, source.Map, table.Header);
        (MappedField brand, MappedField serial) = (fields.Field("brand"), fields.Field("serial"));
        (MappedField made, MappedField day) = (fields.Field("made_on"), fields.Field(DayOf(source.Map.Kind)));
        MappedField[] started = [fields.Field("purchased_on"), fields.Field("installed_on")];
        (MappedField Field, double PerYear)[] ages = [.. Ages.Select(a => (fields.Field(a.Field), a.PerYear)).Where(a => a.Item1.IsMapped)];
        var row = new MappedRow(table.Reader.Row, static (_, _) => "", style);
        var rows = new DataRows(table, static (_, _) => { });
        while (rows.Next(cancellation))
        {
            if (table.Reader.Fault is not null)
            {
                continue;
            }

            row.Begin(table.Reader.Line);
            if (Brand(row.Span(brand)) is { } known)
            {
                // The span of a serial is good only until the next field is read.
                RowDate date = new(Made(row, made), Started(row, started), Aged(row, ages, day));
                serials.Add(known, row.CodeSpan(serial), date);
            }
        }
    }

    private static string DayOf(string kind) => kind == "jobs" ? "opened_on" : "listed_on";

    private static BuildInterval? Made(MappedRow row, MappedField field) => row.Made(field) is (var from, var to) && from <= to ? new BuildInterval(from, to) : null;

    private static DateOnly? Started(MappedRow row, MappedField[] fields)
    {
        DateOnly? first = null;
        foreach (MappedField field in fields)
        {
            DateOnly? day = row.Day(field, lesser: true);
            first = first is null || day < first ? day ?? first : first;
        }

        return first;
    }

    // An age of n is rounded to a unit either way.
    private static BuildInterval? Aged(MappedRow row, (MappedField Field, double PerYear)[] ages, MappedField day)
    {
        foreach ((MappedField field, double perYear) in ages)
        {
            if (row.Age(field, MostYears * perYear) is { } age && row.Day(day, lesser: true) is { } on)
            {
                return new BuildInterval(Before(on, ((age + 1) / perYear) + YearsInStock), Before(on, Math.Max(0, age - 1) / perYear));
            }
        }

        return null;
    }

    private static DateOnly Before(DateOnly day, double years) => DateOnly.FromDayNumber(Math.Max(0, day.DayNumber - (int)(years * DaysPerYear)));

    // Null: no brand, or one that the shop gives a rule for.
    private string? Brand(ReadOnlySpan<char> typed)
    {
        Dictionary<string, string?>.AlternateLookup<ReadOnlySpan<char>> byText = _brands.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!byText.TryGetValue(typed, out string? brand))
        {
            string text = typed.ToString();
            brand = CompactKey.From(text).Length == 0 || given.Rules.Names(text) ? null : text;
            if (_brands.Count < MostBrands)
            {
                _brands.Add(text, brand);
            }
        }

        return brand;
    }
}
