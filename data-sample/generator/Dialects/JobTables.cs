using System.Globalization;
using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Dialects;

/// <summary>The job log in its layouts, its separate part lines, and the lists that explain its codes.</summary>
internal sealed class JobTables(Dialect dialect, ShopHistory shop, Dice dice)
{
    private const int Groups = 3;

    private readonly Dictionary<CallEnd, string> _outcomes = Enum.GetValues<CallEnd>().ToDictionary(e => e, e => dice.Pick(DialectWords.OutcomeWords(Meaning(e), dialect.CellLanguage)));
    private readonly Dictionary<string, string> _typeCodes = shop.Models.Select(m => m.Type).Distinct(StringComparer.Ordinal).ToDictionary(t => t, t => Code(t), StringComparer.Ordinal);
    private readonly string _closed = dice.Pick(DialectWords.OutcomeWords("closed_status", dialect.CellLanguage));
    private readonly string _open = dice.Pick(DialectWords.OutcomeWords("open_status", dialect.CellLanguage));
    private readonly string _void = dice.Pick(DialectWords.OutcomeWords("void_status", dialect.CellLanguage));
    private readonly bool _letterCodes = dice.Chance(0.5);

    private bool HasClosed => dialect.End is Ending.Closed or Ending.ClosedAndOutcome or Ending.ClosedAndStatus;

    private bool HasStatus => dialect.End is Ending.ClosedAndStatus or Ending.Status;

    private bool HasOutcome => dialect.End is Ending.ClosedAndOutcome or Ending.Outcome;

    /// <summary>The job log: one table, or one a year.</summary>
    public IReadOnlyList<TableDraft> Log(string name)
    {
        List<(Call Call, UsedPart? Part)> rows = dialect.Parts == PartLayout.Rows
            ? [.. shop.Calls.SelectMany(c => c.Parts.Count == 0 ? [(c, (UsedPart?)null)] : c.Parts.Select(p => (c, (UsedPart?)p)))]
            : [.. shop.Calls.Select(c => (c, (UsedPart?)null))];
        TableDraft whole = Columns(new TableBuilder(name, "jobs", dice), rows).Build($"key {dialect.Key}; parts {dialect.Parts}, {dialect.Naming}; end by {dialect.End}");
        if (!dialect.YearFiles)
        {
            return [dialect.StackYears ? whole with { Banners = YearStarts(rows) } : whole];
        }

        return [.. Enumerable.Range(0, rows.Count).GroupBy(i => DateOnly.FromDayNumber(rows[i].Call.Opened).Year)
            .Select(g => whole.Only(g.Key.ToString("0000", CultureInfo.InvariantCulture), [.. g]))];
    }

    /// <summary>Part lines in a file of their own, known by the job's number.</summary>
    public TableDraft Lines(string name)
    {
        List<(Call Call, UsedPart Part, int Line)> rows = [.. shop.Calls.SelectMany(c => c.Parts.Select((p, i) => (c, p, i + 1)))];
        TableBuilder table = new TableBuilder(name, "job_parts", dice)
            .Add("for_job", rows, r => Cell.Word(r.Call.Number), "job_id")
            .Add("line", rows, r => Cell.Whole(r.Line));
        AddPart(table, rows, r => r.Part, 0);
        return table.Build();
    }

    /// <summary>Lists that say what the log's codes mean; empty if it has none.</summary>
    public IEnumerable<TableDraft> CodeLists(string name)
    {
        if (dialect.OutcomeCodes && HasOutcome)
        {
            CallEnd[] ends = Enum.GetValues<CallEnd>();
            yield return new TableBuilder(name, "none", dice)
                .Add("code", ends, e => Cell.Word(OutcomeCode(e)))
                .Add("meaning", ends, e => Cell.Word(_outcomes[e]))
                .Build("codes of the outcomes");
        }

        if (dialect.TypeCodes)
        {
            string[] types = [.. _typeCodes.Keys];
            yield return new TableBuilder(name + " 2", "none", dice)
                .Add("code", types, t => Cell.Word(_typeCodes[t]))
                .Add("meaning", types, Cell.Word)
                .Build("codes of the machine types");
        }
    }

    public string TypeText(string type) => dialect.TypeCodes ? _typeCodes[type] : type;

    private static string Meaning(CallEnd end) => end switch
    {
        CallEnd.Part => "part",
        CallEnd.NoPart => "no_part",
        CallEnd.Declined => "declined",
        CallEnd.Cancelled => "cancelled",
        _ => "open",
    };

    private static Dictionary<int, string> YearStarts(List<(Call Call, UsedPart? Part)> rows) => Enumerable.Range(1, rows.Count - 1)
        .Where(i => DateOnly.FromDayNumber(rows[i].Call.Opened).Year != DateOnly.FromDayNumber(rows[i - 1].Call.Opened).Year)
        .ToDictionary(i => i, i => DateOnly.FromDayNumber(rows[i].Call.Opened).Year.ToString("0000", CultureInfo.InvariantCulture));

    private static string Code(string type) => string.Concat(type.Split(' ').Select(w => w[..Math.Min(2, w.Length)])).ToUpperInvariant();

    private TableBuilder Columns(TableBuilder table, IReadOnlyList<(Call Call, UsedPart? Part)> rows)
    {
        bool unique = dialect.Key is JobKey.Plain or JobKey.Prefixed;
        bool technicianKnown = dialect.Key == JobKey.PerTechnician;
        if (dialect.Key != JobKey.Missing)
        {
            table.Add("job_id", rows, r => Cell.Word(r.Call.Number), unique ? "job_id" : null, present: 1);
        }

        table.Add("opened", rows, r => Cell.Day(r.Call.Opened), "opened_on");
        if (HasClosed)
        {
            table.Add("closed", rows, r => Cell.Day(r.Call.Closed), "closed_on");
        }

        table
            .Add("visited", rows, r => r.Call.Visited <= shop.LastDay ? Cell.Day(r.Call.Visited) : Cell.Empty)
            .Add("booked", rows, r => r.Call.Visited <= shop.LastDay ? Cell.Day(Math.Max(r.Call.Opened, r.Call.Visited - (r.Call.Visited % 2))) : Cell.Empty)
            .Add("invoiced", rows, r => r.Call.Closed is { } day && day + 9 <= shop.LastDay ? Cell.Day(day + 3 + (day % 7)) : Cell.Empty)
            .Add("migrated", rows, _ => Cell.Day(shop.LastDay + 2));
        if (HasStatus)
        {
            table.Add("status", rows, r => Cell.Word(Status(r.Call)), "outcome");
        }

        if (HasOutcome)
        {
            table.Add("outcome", rows, r => Outcome(r.Call), "outcome");
        }

        AddMachine(table, rows);
        table
            .Add("complaint", rows, r => Cell.Word(r.Call.Complaint), "complaint")
            .Add("error_code", rows, r => r.Call.ErrorCode.Length > 0 ? Cell.Word(r.Call.ErrorCode) : Cell.Empty)
            .Add("technician", rows, r => Cell.Word(shop.Technicians[r.Call.Technician]), present: technicianKnown ? 1 : null)
            .Add("van", rows, r => Cell.Word($"V{(r.Call.Technician + 1).ToString(CultureInfo.InvariantCulture)}"))
            .Add("customer", rows, r => Cell.Word(r.Call.Machine.Owner.Name))
            .Add("phone", rows, r => Cell.Word(r.Call.Machine.Owner.Phone))
            .Add("address", rows, r => Cell.Word(r.Call.Machine.Owner.Street))
            .Add("email", rows, r => Cell.Word(r.Call.Machine.Owner.Email))
            .Add("customer_kind", rows, r => Cell.Word(r.Call.Machine.Owner.Kind))
            .Add("visits", rows, r => Cell.Whole(r.Call.Visits))
            .Add("labour", rows, r => Cell.Whole(r.Call.Minutes));
        AddParts(table, rows);
        return table;
    }

    private void AddMachine(TableBuilder table, IReadOnlyList<(Call Call, UsedPart? Part)> rows)
    {
        double? withAsset = dialect.ByAsset ? 0.4 : null;
        table
            .Add("type", rows, r => Cell.Word(TypeText(r.Call.Machine.Model.Type)), "appliance_type", present: withAsset)
            .Add("brand", rows, r => Cell.Word(r.Call.Machine.Model.Brand), present: withAsset)
            .Add("model", rows, r => Cell.Word(r.Call.Machine.Model.Number), "model", present: withAsset);
        if (dialect.ByAsset)
        {
            table.Add("asset", rows, r => Cell.Word(r.Call.Machine.Asset), "serial");
        }
        else
        {
            table.Add("serial", rows, r => r.Call.Minutes % 25 == 0 ? Cell.Empty : Cell.Word(r.Call.Machine.Serial), "serial", present: 0.85);
        }

        table
            .Add("made", rows, r => Made(r.Call.Machine.Made))
            .Add("purchased", rows, r => Cell.Day(r.Call.Machine.Installed))
            .Add("age", rows, r => Cell.Whole(Math.Max(0, (r.Call.Opened - r.Call.Machine.Made) / 365)))
            .Add("age_months", rows, r => Cell.Whole(Math.Max(0, (r.Call.Opened - r.Call.Machine.Made) / 30)));
    }

    /// <summary>A build day as precisely as the office knows it.</summary>
    public Cell Made(int day)
    {
        DateOnly date = DateOnly.FromDayNumber(day);
        return dialect.MadeFormat switch
        {
            "day" => Cell.Day(day),
            "year" => Cell.Whole(date.Year),
            _ => Cell.Word(date.ToString(dialect.MadeFormat, CultureInfo.InvariantCulture)),
        };
    }

    private void AddParts(TableBuilder table, IReadOnlyList<(Call Call, UsedPart? Part)> rows)
    {
        switch (dialect.Parts)
        {
            case PartLayout.Rows:
                AddPart(table, rows, r => r.Part, 0);
                break;
            case PartLayout.Groups:
                bool priced = dice.Chance(0.4);
                for (int g = 1; g <= Groups; g++)
                {
                    int index = g - 1;
                    AddPart(table, rows, r => r.Call.Parts.Count > index ? r.Call.Parts[index] : null, g, priced);
                }

                break;
            case PartLayout.List:
                string[] fields = dialect.Naming == PartNaming.Number ? ["parts_list"] : ["parts_list", "description"];
                table.Add("parts_list", rows, r => r.Call.Parts.Count == 0 ? Cell.Empty : Cell.Word(string.Join(dialect.ListSeparator, r.Call.Parts.Select(PartText))), dialect.Naming == PartNaming.Name ? "description" : "parts_list", fields);
                break;
        }
    }

    private string PartText(UsedPart used) => dialect.Naming switch
    {
        PartNaming.Name => used.Part.Name,
        PartNaming.NumberAndNameInOneCell => $"{used.Number} - {used.Part.Name}",
        _ => used.Number,
    };

    private void AddPart<T>(TableBuilder table, IReadOnlyList<T> rows, Func<T, UsedPart?> part, int group, bool? priced = null)
    {
        Cell Of(T row, Func<UsedPart, Cell> cell) => part(row) is { } used ? cell(used) : Cell.Empty;
        if (dialect.Naming == PartNaming.NumberAndNameInOneCell)
        {
            table.Add("part", rows, r => Of(r, u => Cell.Word(PartText(u))), "part", ["part", "description", "parts_list"], group);
        }
        else
        {
            if (dialect.Naming != PartNaming.Name)
            {
                table.Add("part", rows, r => Of(r, u => Cell.Word(u.Number)), "part", group: group);
            }

            if (dialect.Naming != PartNaming.Number)
            {
                table.Add("description", rows, r => Of(r, u => Cell.Word(u.Part.Name)), "description", group: group);
            }
        }

        table.Add("quantity", rows, r => Of(r, u => Cell.Whole(u.Quantity)), group == 0 && typeof(T) == typeof((Call, UsedPart, int)) ? "quantity" : null, group: group, present: 1);
        table.Add("price", rows, r => Of(r, u => Cell.Money(u.Part.Price)), group: group, present: priced is { } p ? (p ? 1 : 0) : null);
    }

    private string Status(Call call) => call.End switch
    {
        CallEnd.Open => _open,
        CallEnd.Cancelled => _void,
        _ => _closed,
    };

    private Cell Outcome(Call call)
    {
        string text = dialect.OutcomeCodes ? OutcomeCode(call.End) : _outcomes[call.End];
        return text.Length == 0 ? Cell.Empty : Cell.Word(text);
    }

    private string OutcomeCode(CallEnd end) => _letterCodes
        ? new[] { "PF", "NP", "DC", "CX", "OP" }[(int)end]
        : ((int)end + 1).ToString(CultureInfo.InvariantCulture) + "0";
}
