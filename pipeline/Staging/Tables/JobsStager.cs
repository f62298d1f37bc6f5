using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Job logs: one row per job with its parts beside it, or one row per part.</summary>
internal sealed class JobsStager : TableStager
{
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
        _fields = new JobFields(target.Map, target.Tools.Words);
        _columns = new JobColumns(Table);
        _appliance = new ApplianceFields(target.Map, Table, target.Tools);
        _groups = [.. Enumerable.Range(0, target.Map.PartGroups).Select(g => new PartLineFields(target.Map, g, target.Tools.Words.Components))];
        _ownPart = new PartLineFields(target.Map, null, target.Tools.Words.Components);
        _parts = new PartLineTable(NewTable("staged_job_parts"), target.Tools.Key);
    }

    public override bool OnePartPerRow => _ownPart.IsMapped;

    public override void Stage(MappedRow row)
    {
        bool numbered = _fields.JobId.IsMapped;
        ReadOnlySpan<char> jobId = numbered ? row.NeededSpan(_fields.JobId) : [];
        DateOnly opened = _fields.Opened.Read(row);
        DateOnly? closed = _fields.Closed.Read(row);
        ReadLines(row);
        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        UInt128 digest = RowDigest(row);
        // A log without job numbers: the row's own text is its number, so that the same row again is the same job.
        ReadOnlySpan<char> id = numbered ? Joined(Target.Map.JobPrefix, jobId) : Joined("row-", Target.Tools.Key.Identify(digest));
        DateTime? updated = _fields.Updated.Read(row);
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
            _parts.Add(id, _lines[i], i + 1, updated, null, row.Line);
        }

        EndRow(row, digest);
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

        if (_fields.PartsList.IsMapped)
        {
            ReadPartsList(row);
        }

        if (_ownPart.IsMapped && _ownPart.Read(row) is { } own)
        {
            _lines.Add(own);
        }
    }

    private void ReadPartsList(MappedRow row)
    {
        foreach ((string part, int quantity) in PartsListText.Read(row.Span(_fields.PartsList)))
        {
            if (DamagedCode.Is(part))
            {
                row.Fail(_fields.PartsList, ReasonCode.DamagedBySpreadsheet, "A spreadsheet turned a part number in the list into a number or a date.", "Type the number from the paper or the invoice.");
            }
            else if (!EmptyMark.Is(part))
            {
                _lines.Add(new PartLine(CodeText.Parse(part), default, quantity, null, null));
            }
        }
    }

    private void SetRest(MappedRow row, int at, DateTime? updated)
    {
        ComplaintText? said = _fields.Complaint.Read(row);
        string? code = _fields.ErrorCode.Read(row) ?? said?.Code;
        string? complaint = said is null ? null : _appliance.WithoutCustomer(row, said);
        _columns.Outcomes.Set(at, _fields.Outcome.Read(row));
        _columns.Technicians.Set(at, _fields.Technician.Read(row));
        _columns.Vans.Set(at, _fields.Van.Read(row));
        _columns.CustomerKinds.Set(at, _fields.CustomerKind.Read(row));
        _columns.SerialFaults.Set(at, _appliance.SerialFault);
        _columns.Purchased.Set(at, _fields.Purchased.Read(row));
        _columns.Ages.Set(at, _fields.Age.Read(row));
        _columns.Complaints.Set(at, complaint);
        _columns.ComplaintKinds.Set(at, said is null ? Need.NoComplaint : said.Kind(complaint!, _appliance.Type));
        _columns.ErrorCodes.Set(at, code);
        _columns.Visits.Set(at, _fields.Visits.Read(row));
        _columns.Labour.Set(at, _fields.Labour.Read(row));
        _columns.Updated.Set(at, updated);
    }
}
