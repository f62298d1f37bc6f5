namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Columns exchanged where the rows themselves, or other tables, say which is which, whatever the weights found likelier:
/// a total is no price of one piece, a name is no number, the number of a job is no number of an order, and pieces
/// delivered are never more than pieces ordered. What a person has settled stays.
/// </summary>
internal sealed class ChoiceMends
{
    private const double NearlyAll = 0.95;
    private const double Most = 0.8;
    private const double Some = 0.3;
    private const double Likely = 0.1;
    private const double Likelier = 0.5;
    private const double Hardly = 0.005;
    private const double LikelySure = 0.8;
    private const int Mostly = 8;
    private const int Wholly = 14;
    private static readonly string[] Texts = ["description", "complaint", "parts_list"];
    private static readonly string[] OfParts = ["part", "description"];
    private static readonly string[] OfFittedParts = ["part", "description", "parts_list"];
    private static readonly string[] WithJobs = ["job_parts", "part_orders"];
    private static readonly string[] OnPartLines = ["quantity", "from_van"];
    private readonly FieldChoice _choice;
    private readonly int[] _columns;
    private readonly TableSample _table;
    private readonly TableEvidence _evidence;
    private readonly SecondLook _second;
    private readonly double _settled;

    private ChoiceMends(FieldChoice choice, TableSample table, TableEvidence evidence, SecondLook second, double settled) =>
        (_choice, _columns, _table, _evidence, _second, _settled) = (choice, [.. choice.Columns], table, evidence, second, settled);

    /// <summary>The choice, mended.</summary>
    /// <param name="choice">Which column gives which field.</param>
    /// <param name="table">The table.</param>
    /// <param name="evidence">Its evidence.</param>
    /// <param name="second">The tables of the shop.</param>
    /// <param name="settled">Log odds that only an answer of a person has.</param>
    public static FieldChoice Of(FieldChoice choice, TableSample table, TableEvidence evidence, SecondLook second, double settled)
    {
        var mends = new ChoiceMends(choice, table, evidence, second, settled);
        switch (choice.Kind)
        {
            case "parts":
                mends.FindNumberOfPriceList();
                break;
            case "part_orders":
                mends.PreferPriceOfOnePiece("unit_cost");
                mends.PreferPiecesOrdered();
                mends.PreferListedNumber();
                mends.TellJobFromOrder();
                break;
            case "jobs":
                mends.PreferPriceOfOnePiece("price");
                mends.KeepCustomers();
                mends.FindNumberOfJobs();
                mends.PreferNamedNumber("job_id", "job");
                mends.PreferNamedNumber("serial", "serial");
                mends.PreferDayOfEveryRow();
                mends.PreferNumberOfName();
                mends.LeavePartsToTheirLines();
                break;
            case "units":
                mends.PreferNamedNumber("serial", "serial");
                break;
            case "job_parts":
                mends.PreferPriceOfOnePiece("price");
                mends.PreferListedNumber();
                break;
            case "van_counts" or "fitments":
                mends.PreferListedNumber();
                break;
        }

        mends.FindMachines();
        mends.DropPiecesOfNothing();
        return choice with { Columns = mends._columns };
    }

    // A total is the price of one piece times the pieces.
    private void PreferPriceOfOnePiece(string price)
    {
        int pieces = Column("quantity"), total = Column(price);
        if (pieces >= 0 && IsOpen(price) && First(Free().Where(c => PieceColumns.IsPriceOf(_table.Columns[c], _table.Columns[pieces], _table.Columns[total]))) is var unit and >= 0)
        {
            Give(price, unit);
        }
    }

    private void PreferPiecesOrdered()
    {
        if (IsOpen("quantity") && First(Free().Where(c => PieceColumns.AreOrdered(_table.Columns[c], _table.Columns[Column("quantity")]) || PieceColumns.IsPartOf(_table.Columns[Column("quantity")], _table.Columns[c]))) is var ordered and >= 0)
        {
            Give("quantity", ordered);
        }
    }

    // The first column that names the rows of a price list is the shop's own number; words under the number's heading are the name.
    private void FindNumberOfPriceList()
    {
        int part = Column("part"), name = Column("description");
        bool isName = part >= 0 && IsOpen("part") && ColumnFacts.IsWords(_table.Columns[part]) && (name < 0 || IsOpen("description"));
        int number = part < 0 ? First(Free().Where(IsRowNumber)) : isName ? First(Free().Append(name).Where(c => c >= 0 && IsRowNumber(c))) : -1;
        if (number >= 0)
        {
            Give("part", number);
            Give("description", isName && (name < 0 || name == number) ? part : name);
        }
    }

    // Numbers that stand in the price list are the parts', and what goes with them is their name.
    private void PreferListedNumber()
    {
        int part = Column("part"), name = Column("description");
        if (part >= 0 && (!IsOpen("part") || IsListed(part)))
        {
            return;
        }

        bool isUnrelated = part < 0 || _evidence.Columns[part].Links.Count == 0;
        int listed = First(Enumerable.Range(0, _table.Columns.Count).Where(c => (IsListed(c) || (isUnrelated && IsLikelyListed(c))) && (Free().Contains(c) || (c == name && IsOpen("description")))));
        if (listed < 0)
        {
            return;
        }

        if (name == listed)
        {
            Give("description", -1);
            Give("description", First(Free().Where(c => c != listed && ColumnFacts.IsWords(_table.Columns[c]) && _evidence.Columns[listed].Determines[c] >= Mostly).OrderByDescending(c => _evidence.Columns[listed].Determines[c])));
        }

        Give("part", listed);
    }

    // A part's number tells its name; the number of a servicer or a dealer does not.
    private void PreferNumberOfName()
    {
        int part = Column("part"), name = Column("description");
        if (part >= 0 && name >= 0 && IsOpen("part") && !IsListed(part) && !HeaderTokens.Says(_table.Columns[part].Name, "part")
            && First(Free().Where(c => ColumnFacts.IsCode(_table.Columns[c]) && HeaderTokens.Says(_table.Columns[c].Name, "part") && _evidence.Columns[c].Determines[name] >= Mostly)) is var number and >= 0)
        {
            Give("part", number);
        }
    }

    // The number of a job on an order line is no number of the order.
    private void TellJobFromOrder()
    {
        if (IsOpen("order_id") && Column("job_id") < 0 && KindMends.Names(_evidence.Columns[Column("order_id")], _second, "jobs", "job_id"))
        {
            Give("job_id", Column("order_id"));
            Give("order_id", -1);
            Give("order_id", First(Free().Where(c => ColumnFacts.NamesRows(_table.Columns[c])).OrderByDescending(c => Math.Max(Odds(c, "order_id"), FieldChoice.LogOdds(Hardly))).ThenBy(c => c)));
        }
    }

    // What a machine is stands where the words for machines stand.
    private void FindMachines()
    {
        int type = Column("appliance_type"), said = Column("description");
        if (Place("appliance_type") < 0 || (type >= 0 && !(IsOpen("appliance_type") && CellDoubts.Are(_evidence, type, "appliance_type"))))
        {
            return;
        }

        bool maySay = _choice.Kind == "jobs" && said >= 0 && IsOpen("description");
        int machines = First(Free().Concat(maySay ? [said] : []).Where(c => CellDoubts.NamesAppliances(_evidence.Columns[c])).Order());
        if (machines >= 0)
        {
            Give("description", machines == said ? -1 : said);
            Give("appliance_type", machines);
        }
    }

    // A name that may be a customer's is kept as one until somebody says otherwise.
    private void KeepCustomers()
    {
        foreach (string field in Texts)
        {
            if (Column("customer_name") < 0 && IsOpen(field) && FieldChoice.Chance(Odds(Column(field), field)) < LikelySure && FieldChoice.Chance(Odds(Column(field), "customer_name")) >= Likely)
            {
                Give("customer_name", Column(field));
                Give(field, -1);
            }
        }
    }

    // Pieces of what? A log that names no part counts none.
    private void DropPiecesOfNothing()
    {
        foreach (string field in OnPartLines)
        {
            if (_choice.Kind == "jobs" && IsOpen(field) && OfParts.All(f => Column(f) < 0))
            {
                Give(field, -1);
            }
        }
    }

    // What the lines of another table point to as their job names the jobs.
    private void FindNumberOfJobs()
    {
        int number = Column("job_id");
        if ((number < 0 || (IsOpen("job_id") && !IsPointedAt(number))) && First(Free().Where(c => ColumnFacts.NamesEachRow(_table.Columns[c]) && IsPointedAt(c))) is var named and >= 0)
        {
            Give("job_id", named);
        }
    }

    // A database numbers its rows, "id", and an office its machines, beside the number that the header of another column names.
    private void PreferNamedNumber(string field, string word)
    {
        int number = Column(field);
        if (number >= 0 && IsOpen(field) && !HeaderTokens.Says(_table.Columns[number].Name, word)
            && First(Free().Where(c => HeaderTokens.Says(_table.Columns[c].Name, word) && Named(c, field) >= Wholly && ColumnFacts.IsCode(_table.Columns[c]) && NamesAsMany(c, number) && (IsLinked(c) || !IsLinked(number)))) is var named and >= 0)
        {
            Give(field, named);
        }
    }

    // Each call has a day; an approval or an invoice has one only now and then, and later.
    private void PreferDayOfEveryRow()
    {
        int day = Column("opened_on");
        if (day >= 0 && IsOpen("opened_on") && _table.Columns[day].Filled < Some * _table.Sampled
            && First(Free().Where(c => DayColumns.IsShortlyBefore(_table.Columns[c], _table.Columns[day])).OrderBy(c => _table.Columns[c].Days.Average())) is var first and >= 0)
        {
            Give("opened_on", first);
        }
    }

    // Where other lines name the parts of these jobs, a column whose header says nothing of parts is something else.
    private void LeavePartsToTheirLines()
    {
        if (Column("job_id") < 0 || !IsPointedAt(Column("job_id"), "job_parts"))
        {
            return;
        }

        foreach (string field in OfFittedParts)
        {
            if (IsOpen(field) && !HeaderTokens.Says(_table.Columns[Column(field)].Name, "part") && !CellDoubts.NamesComponents(_evidence.Columns[Column(field)]) && !IsListed(Column(field)))
            {
                Give(field, -1);
            }
        }
    }

    private int Own => _second.First.Shop.Tables.TakeWhile(t => t != _evidence).Count();

    private bool IsPointedAt(int column, params string[] kinds)
    {
        int own = Own;
        return (kinds.Length == 0 ? WithJobs : kinds).Any(k => _second.First.Shop.Tables.Index().Any(t =>
            t.Index != own && _second.Kinds[t.Index][((IList<string>)KindModels.Names).IndexOf(k)] >= Likelier && _second.First.Choice(t.Index, k) is var lines && lines.ColumnOf("job_id") is var job and >= 0
            && t.Item.Columns[job].Links.Any(l => l.Table == own && l.Column == column && l.Percent >= NearlyAll * 100)));
    }

    private bool IsLinked(int column)
    {
        int own = Own;
        return _evidence.Columns[column].Links.Count > 0 || _second.First.Shop.Tables.Any(t => t.Columns.Any(c => c.Links.Any(l => l.Table == own && l.Column == column)));
    }

    private int Named(int column, string field) => FieldLevels.HeaderLevel(_evidence.Columns[column], field);

    // Not much fewer values, and not on much fewer rows.
    private bool NamesAsMany(int column, int other) => _table.Columns[column].Distinct >= Most * _table.Columns[other].Distinct;

    private int Place(string field) => ((IList<string>)_choice.Fields).IndexOf(field);

    private int Column(string field) => Place(field) is var at and >= 0 ? _columns[at] : -1;

    private double Odds(int column, string field) => _choice.Odds[column, Place(field)];

    private bool IsOpen(string field) => Column(field) is var c and >= 0 && Odds(c, field) < _settled;

    // Columns that give nothing, and of which nobody has said so.
    private IEnumerable<int> Free() => Enumerable.Range(0, _table.Columns.Count)
        .Where(c => !_columns.Contains(c) && _table.Columns[c].Filled > 0 && Enumerable.Range(0, _choice.Fields.Count).Any(f => _choice.Odds[c, f] > -_settled));

    private void Give(string field, int column)
    {
        if (Place(field) is var at and >= 0)
        {
            _columns[at] = column;
        }
    }

    private bool IsListed(int column) => KindMends.Names(_evidence.Columns[column], _second, "parts", "part");

    private bool IsLikelyListed(int column) => ColumnFacts.IsCode(_table.Columns[column]) && KindMends.NamesParts(_evidence.Columns[column], _second);

    private bool IsRowNumber(int column) => ColumnFacts.IsRowNumber(_table.Columns[column]);

    private static int First(IEnumerable<int> columns) => columns.FirstOrDefault(-1);
}
