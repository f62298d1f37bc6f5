using PartsSignal.Analysis.Vocabulary;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Job logs: one row per job with its parts beside it, or one row per part.</summary>
internal sealed class JobsStager : TableStager
{
    private const int ComplaintBits = 15;
    private readonly MappedField _jobId;
    private readonly MappedField _partsList;
    private readonly MappedField _serial;
    private readonly MappedField _opened;
    private readonly MappedField _closed;
    private readonly ValueColumn<DateOnly> _openedOn;
    private readonly ValueColumn<DateOnly> _closedOn;
    private readonly CachedField<ComplaintText?> _complaint;
    private readonly CachedField<string?> _errorCode;
    private readonly CachedField<string?> _status;
    private readonly PlainFields _plain;
    private readonly ApplianceFields _appliance;
    private readonly TextColumn _jobIds;
    private readonly TextColumn _complaints;
    private readonly WordColumn _complaintKinds;
    private readonly WordColumn _errorCodes;
    private readonly WordColumn _statuses;
    private readonly PartLineFields[] _groups;
    private readonly PartLineFields _ownPart;
    private readonly PartLineTable _parts;
    private readonly ComponentClassifier _components;
    private readonly List<PartLine> _lines = [];
    private char[] _id = [];

    public JobsStager(StageTarget target)
        : base(target, "jobs")
    {
        FileWords file = target.Personal.Words;
        _serial = target.Map.Field("serial");
        ApplianceNames appliances = target.Tools.Words.Appliances.For(file.Languages);
        (_jobId, _partsList) = (Claim("job_id"), Claim("parts_list"));
        (_opened, _closed) = (Claim("opened_on"), Claim("closed_on"));
        (_openedOn, _closedOn) = (Table.Value<DateOnly>("opened_on"), Table.Value<DateOnly>("closed_on"));
        _complaint = new(Claim("complaint"), (row, field) => ComplaintText.Parse(row.FreeText(field), file.Complaints, appliances, file), ComplaintBits);
        _errorCode = new(Claim("error_code"), (row, field) => target.Personal.ErrorCode(row, field, row.Text(field)));
        MappedField status = Claim("status");
        // An outcome column may hold words of status: in many logs one column says both.
        _status = status.IsMapped
            ? new(status, (row, field) => row.Known(field, target.Tools.Words.Statuses))
            : new(target.Map.Field("outcome"), (row, field) => target.Tools.Words.Statuses.FindWhole(row.Word(field)));
        _statuses = Table.Word("status");
        (_jobIds, _errorCodes) = (Table.Text("job_id"), Table.Word("error_code"));
        (_complaints, _complaintKinds) = (Table.Text("complaint_text"), Table.Word("complaint_kind"));
        _appliance = new ApplianceFields(Claim, Table, target);
        _plain = Plain();
        _groups = [.. Enumerable.Range(0, target.Map.PartGroups).Select(g => new PartLineFields(target, g))];
        _ownPart = new PartLineFields(target, null);
        _parts = new PartLineTable(NewTable("staged_job_parts"));
        _components = target.Tools.Words.Components.For(target.Personal.Words.Languages);
    }

    public override bool OnePartPerRow => _ownPart.IsMapped;

    public override void Stage(MappedRow row)
    {
        int at = Table.At;
        bool numbered = IsNumbered(_jobId, row);
        ReadOnlySpan<char> jobId = numbered ? row.NeededSpan(_jobId) : [];
        DateOnly opened = row.NeededDay(_opened);
        _openedOn.Set(at, opened);
        string? closing = ClosingCell.Status(row, _closed, Target.Tools.Words.Statuses);
        _closedOn.Set(at, closing is null ? row.DayFrom(_closed, opened) : null);
        _plain.SetRefusing(row, at);
        ReadLines(row);
        if (row.Fault is not null)
        {
            return;
        }

        UInt128 digest = RowDigest(row);
        // A job without a number: the row's own text is its number, so that the same row again is the same job. Rows of one
        // appliance that differ in their parts alone are the parts of one job.
        bool sharesJob = OnePartPerRow && !row.Raw(_serial).IsEmpty;
        ReadOnlySpan<char> id = numbered ? Joined(Target.Map.JobPrefix, CodeScrubber.IsPlain(jobId) || CodeScrubber.IsNumbered(jobId) ? jobId : Target.Personal.Id(jobId.ToString())) : Joined("row-", Target.Tools.Key.Identify(sharesJob ? RowDigest(row, _ownPart.Fields) : digest));
        _jobIds.Set(at, id);
        ComplaintText? said = _complaint.Read(row);
        _appliance.Set(row, at, said);
        _plain.SetOthers(row, at);
        _statuses.Set(at, _status.Read(row) ?? closing);
        SetComplaint(row, at, said);
        if (row.Fault is not null)
        {
            return;
        }

        for (int i = 0; i < _lines.Count; i++)
        {
            _parts.Add(id, _lines[i], i + 1, null, null, row.Line);
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

        if (_partsList.IsMapped)
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
        foreach ((string part, int quantity) in PartsListText.Read(row.Span(_partsList), row.Style.LeadsWithCounts))
        {
            if (DamagedCode.Is(part))
            {
                row.Fail(_partsList, ReasonCode.DamagedBySpreadsheet, "A spreadsheet turned a part number in the list into a number or a date.", "Type the number from the paper or the invoice.");
            }
            else if (!EmptyMark.Is(part))
            {
                PartCell cell = PartCellReader.Read(row, _partsList, part, Target.Personal, _components);
                PartWords words = cell.Words.Text is { } text ? cell.Words with { Text = Target.Personal.Customer.Without(row, new TextTokens(text)) } : cell.Words;
                _lines.Add(new PartLine(cell.Code, words, quantity, null, null, _ownPart.Supplier(row)));
            }
        }
    }

    private void SetComplaint(MappedRow row, int at, ComplaintText? said)
    {
        string? complaint = said is null ? null : Target.Personal.Customer.Without(row, said.Words);
        _complaints.Set(at, _appliance.IsForgotten ? null : complaint);
        string? type = _appliance.IsGroup ? said?.ApplianceType : _appliance.Type;
        _complaintKinds.Set(at, said is null ? Need.NoComplaint : said.Kind(complaint!, type, row, Target.Personal.Customer));
        _errorCodes.Set(at, _errorCode.Read(row) ?? said?.Code);
    }
}
