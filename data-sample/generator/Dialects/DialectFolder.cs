using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>Lays the tables down as files: text files, one workbook of all, a workbook of the yearly logs, or a workbook each.</summary>
internal sealed class DialectFolder
{
    private static readonly string[] ShopNames = ["Hollander & Wren", "Sudbrook Service", "Atelier Vernel", "Kundendienst Tanneck", "Taller Robledal", "Servis Brzozowa"];

    private readonly Dialect _dialect;
    private readonly string _folder;
    private readonly string _shopName;
    private readonly TextTableWriter _text;
    private readonly WorkbookWriter _workbooks;
    private readonly List<PlacedTable> _placed = [];

    public DialectFolder(Dialect dialect, long seed, string folder)
    {
        Dice dice = Dice.For(seed, "folder");
        _dialect = dialect;
        _folder = folder;
        _shopName = dice.Pick(ShopNames);
        var cells = new CellWriter(dialect);
        _text = new TextTableWriter(dialect, cells, _shopName, dice);
        _workbooks = new WorkbookWriter(dialect, cells);
    }

    public IReadOnlyList<PlacedTable> Write(IReadOnlyList<TableDraft> log, IReadOnlyList<TableDraft> rest)
    {
        switch (_dialect.Container)
        {
            case Container.OneWorkbook:
                Workbook(_shopName.Split(' ')[0].ToLowerInvariant(), [.. log, .. rest]);
                break;
            case Container.YearlyWorkbook:
                Workbook("log", log);
                Texts(rest, "");
                break;
            case Container.WorkbookEach:
                Workbook("log", log);
                foreach (TableDraft table in rest)
                {
                    Workbook(table.Name, [table]);
                }

                break;
            default:
                Texts(log, log.Count > 1 || char.IsAsciiDigit(log[0].Name[0]) ? "log " : "");
                Texts(rest, "");
                break;
        }

        return _placed;
    }

    private void Texts(IReadOnlyList<TableDraft> tables, string prefix)
    {
        foreach (TableDraft table in tables)
        {
            string name = prefix + table.Name + _text.Ending;
            _text.Write(Path.Combine(_folder, name), table);
            _placed.Add(new PlacedTable(name, null, table));
        }
    }

    private void Workbook(string name, IReadOnlyList<TableDraft> tables)
    {
        string file = name + ".xlsx";
        string[] cover = _dialect.Cover ? [_shopName, "Lists of the office", "please do not change the columns"] : [];
        _workbooks.Write(Path.Combine(_folder, file), cover, tables, [.. tables.Select(_ => (IReadOnlyList<string>)[.. _text.Title(_dialect.TitleRows)])]);
        if (cover.Length > 0)
        {
            _placed.Add(new PlacedTable(file, "Cover", new TableDraft("Cover", "none", []) { Note = "cover sheet" }));
        }

        _placed.AddRange(tables.Select(t => new PlacedTable(file, t.Name, t)));
    }
}
