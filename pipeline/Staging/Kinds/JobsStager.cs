using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging.Kinds;

/// <summary>Job logs: one row per job with its parts beside it, or one row per part.</summary>
internal sealed class JobsStager : KindStager
{
    private const double MaxAge = 100;
    private readonly JobFields _fields;
    private readonly JobColumns _columns;
    private readonly ApplianceFields _appliance;
    private readonly PartLineFields[] _groups;
    private readonly PartLineFields _ownPart;
    private readonly PartLineTable _parts;
    private readonly List<PartLine> _lines = [];
    private char[] _id = [];

    public JobsStager(StageTarget target)
        : base(target, "staged_jobs")
    {
        _fields = new JobFields(target.Map);
        _columns = new JobColumns(Table);
        _appliance = new ApplianceFields(target.Map, Table, target.Tools);
        _groups = [.. Enumerable.Range(0, target.Map.PartGroups).Select(g => new PartLineFields(target.Map, g))];
        _ownPart = new PartLineFields(target.Map, null);
        _parts = new PartLineTable(NewTable("staged_job_parts"), target);
    }

    public override bool OnePartPerRow => _ownPart.IsMapped;

    public override void Stage(MappedRow row)
    {
        bool numbered = _fields.JobId.IsMapped;
        ReadOnlySpan<char> jobId = numbered ? row.NeededSpan(_fields.JobId) : [];
        DateOnly opened = row.NeededDay(_fields.Opened);
        DateOnly? closed = row.Day(_fields.Closed);
        ReadLines(row);
        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        ReadOnlySpan<char> hash = RowHash(row);
        // A log without job numbers: the row's own text is its number, so that the same row again is the same job.
        ReadOnlySpan<char> id = numbered ? Joined(Target.Map.JobPrefix, jobId) : Joined("row-", hash[..16]);
        DateTime? updated = row.Time(_fields.Updated);
        _appliance.Set(row, at);
        SetRest(row, at, updated);
        _columns.JobIds.Set(at, id);
        _columns.Opened.Set(at, opened);
        _columns.Closed.Set(at, closed);
        if (row.Fault is not null)
        {
            return;
        }

        for (int i = 0; i < _lines.Count; i++)
        {
            _parts.Add(id, _lines[i], i + 1, true, updated, hash, row.Line);
        }

        EndRow(row, hash);
    }

    private ReadOnlySpan<char> Joined(string first, ReadOnlySpan<char> second)
    {
        if (first.Length == 0)
        {
            return second;
        }

        int length = first.Length + second.Length;
        _id = _id.Length < length ? new char[length * 2] : _id;
        first.CopyTo(_id);
        second.CopyTo(_id.AsSpan(first.Length));
        return _id.AsSpan(0, length);
    }

    private void ReadLines(MappedRow row)
    {
        _lines.Clear();
        foreach (PartLineFields group in _groups)
        {
            if (group.Read(row) is { } line)
            {
                _lines.Add(line);
            }
        }

        foreach ((string part, int quantity) in _fields.PartsList.IsMapped ? PartsListText.Read(row.Span(_fields.PartsList)) : [])
        {
            if (DamagedCode.Is(part))
            {
                row.Fail(_fields.PartsList, ReasonCode.DamagedBySpreadsheet, "A spreadsheet turned a part number in the list into a number or a date.", "Type the number from the paper or the invoice.");
            }
            else if (!EmptyMark.Is(part))
            {
                _lines.Add(new PartLine(part, null, quantity, null, null));
            }
        }

        if (_ownPart.IsMapped && _ownPart.Read(row) is { } own)
        {
            _lines.Add(own);
        }
    }

    private void SetRest(MappedRow row, int at, DateTime? updated)
    {
        string? complaint = row.Text(_fields.Complaint);
        string? code = ErrorCodeText.Plain(row.Text(_fields.ErrorCode)) ?? ErrorCodeText.Find(complaint);
        complaint = complaint is null ? null : _appliance.WithoutCustomer(row, TextScrubber.Scrub(complaint));
        string? outcome = row.Word(_fields.Outcome);
        string? known = Target.Tools.Words.Outcomes.Find(outcome);
        if (outcome is not null && known is null)
        {
            row.Skip(_fields.Outcome, ReasonCode.UnknownWord);
        }

        _columns.Technicians.Set(at, row.Word(_fields.Technician));
        _columns.Vans.Set(at, row.Word(_fields.Van));
        _columns.CustomerKinds.Set(at, CustomerKindText.Read(row.Span(_fields.CustomerKind)));
        _columns.SerialFaults.Set(at, _appliance.SerialFault);
        _columns.Purchased.Set(at, row.Day(_fields.Purchased, lesser: true));
        _columns.Ages.Set(at, Age(row));
        _columns.Complaints.Set(at, complaint);
        _columns.ComplaintKinds.Set(at, Target.Tools.Words.Complaints.Kind(complaint, _appliance.Type));
        _columns.ErrorCodes.Set(at, code);
        _columns.Outcomes.Set(at, known ?? Outcome.Unknown);
        _columns.Visits.Set(at, row.Quantity(_fields.Visits, lesser: true));
        _columns.Labour.Set(at, Labour(row));
        _columns.Updated.Set(at, updated);
    }

    private double? Age(MappedRow row)
    {
        ReadOnlySpan<char> text = row.Span(_fields.Age);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (!NumberText.TryRead(text, row.Style.Numbers, out decimal years))
        {
            row.Skip(_fields.Age, ReasonCode.BadNumber);
            return null;
        }

        if ((double)years is < 0 or > MaxAge)
        {
            row.Skip(_fields.Age, ReasonCode.OutOfRange);
            return null;
        }

        return (double)years;
    }

    private double? Labour(MappedRow row)
    {
        ReadOnlySpan<char> text = row.Span(_fields.Labour);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (DurationText.TryRead(text, row.Style.LabourInHours, out double minutes))
        {
            return minutes;
        }

        row.Skip(_fields.Labour, ReasonCode.BadNumber);
        return null;
    }
}
