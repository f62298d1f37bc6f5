using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Writing;

/// <summary>One file of the job log, in its layout.</summary>
internal sealed class JobLogFile : IDisposable
{
    private readonly LogLayout _layout;
    private readonly DelimitedFile _file;
    private readonly DelimitedFile? _apart;
    private readonly long _seed;
    private int _rows;

    public JobLogFile(string folder, LogLayout layout, long seed)
    {
        _layout = layout;
        _seed = seed;
        _file = new DelimitedFile(folder, layout.File, layout.Separator, layout.Encoding);
        foreach (string note in layout.NotesAbove)
        {
            _file.Note(note);
        }

        _file.Row([.. layout.Columns.Select(c => c.Header), .. PartHeaders()]);
        if (layout.Parts == PartsHeld.Apart)
        {
            _apart = new DelimitedFile(folder, LogLayouts.PartsApartFile, ',', DelimitedFile.Utf8);
            _apart.Row("Job ref", "Part number", "Part name", "Count", "Unit price", "Van stock", "Booked");
        }
    }

    public void Write(JobRow row)
    {
        _rows++;
        string[] cells = [.. _layout.Columns.Select(c => c.Show(row))];
        Slip.MayTouch(cells, _layout, row.Job.Number, _seed);
        switch (_layout.Parts)
        {
            case PartsHeld.InGroups:
                _file.Row([.. cells, .. Groups(row)]);
                break;
            case PartsHeld.InOneCell:
                _file.Row([.. cells, string.Join("; ", row.Parts.Select(p => p.Quantity > 1 ? $"{p.Number} x{JobRow.Text(p.Quantity)}" : p.Number))]);
                break;
            case PartsHeld.InRows when row.Parts.Count > 0:
                foreach (PartCell part in row.Parts)
                {
                    _file.Row([.. cells, .. Part(part)]);
                }

                break;
            case PartsHeld.InRows:
                _file.Row([.. cells, .. _layout.PartColumns.Select(_ => "")]);
                break;
            default:
                _file.Row(cells);
                WriteApart(row);
                break;
        }
    }

    public void Dispose()
    {
        foreach (string note in _layout.NotesBelow)
        {
            _file.Note(string.Format(CultureInfo.InvariantCulture, note, _rows));
        }

        _file.Dispose();
        _apart?.Dispose();
    }

    private void WriteApart(JobRow row)
    {
        foreach (PartCell part in row.Parts)
        {
            _apart!.Row(
                row.Job.Id,
                part.Number,
                part.Description,
                JobRow.Text(part.Quantity),
                JobRow.Money(part.Price, false),
                part.FromVan ? "Y" : "N",
                JobRow.DayText(row.ClosedDay, "yyyy-MM-dd"));
        }
    }

    private IEnumerable<string> PartHeaders() => _layout.Parts switch
    {
        PartsHeld.InGroups => Enumerable.Range(1, LogLayout.Groups).SelectMany(g =>
            _layout.PartColumns.Select(c => string.Format(CultureInfo.InvariantCulture, c.Header, g))),
        _ => _layout.PartColumns.Select(c => c.Header),
    };

    private IEnumerable<string> Groups(JobRow row) => Enumerable.Range(0, LogLayout.Groups).SelectMany(g =>
        g < row.Parts.Count ? Part(row.Parts[g]) : _layout.PartColumns.Select(_ => ""));

    private IEnumerable<string> Part(PartCell part) => _layout.PartColumns.Select(c => c.Field switch
    {
        "part" => part.Number,
        "quantity" => JobRow.Text(part.Quantity),
        "description" => part.Description,
        "price" => JobRow.Money(part.Price, _layout.DecimalComma),
        _ => part.FromVan ? _layout.Words.Yes : _layout.Words.No,
    });
}

/// <summary>
/// The first software let the office type anything into any field. Once in a few hundred jobs a date is no date or the
/// job number is missing, and nobody can read the row.
/// </summary>
internal static class Slip
{
    /// <summary>The cells as typed that day.</summary>
    public static void MayTouch(string[] cells, LogLayout layout, int jobNumber, long seed)
    {
        if (layout.Words != LogWords.Old)
        {
            return;
        }

        Dice dice = Dice.For(seed, "slip", jobNumber);
        double luck = dice.Uniform();
        if (luck < 0.0012)
        {
            cells[Index(layout, "opened_on")] = $"{cells[Index(layout, "opened_on")][..2]}/13{cells[Index(layout, "opened_on")][5..]}";
        }
        else if (luck < 0.0020)
        {
            cells[Index(layout, "job_id")] = "";
        }
        else if (luck < 0.0035)
        {
            cells[Index(layout, "closed_on")] = "tba";
        }
    }

    private static int Index(LogLayout layout, string field)
    {
        for (int i = 0; i < layout.Columns.Count; i++)
        {
            if (layout.Columns[i].Field == field)
            {
                return i;
            }
        }

        throw new ArgumentException($"the layout has no {field}", nameof(field));
    }
}
