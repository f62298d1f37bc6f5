using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Part lines that come apart from their jobs.</summary>
internal sealed class JobPartsStager : TableStager
{
    private readonly MappedField _job;
    private readonly MappedField _updated;
    private readonly PartLineFields _line;
    private readonly PartLineTable _table;

    public JobPartsStager(StageTarget target)
        : base(target, "job_parts")
    {
        _job = target.Map.Field("job_id");
        _line = new PartLineFields(target, null);
        _updated = target.Map.Field("updated_on");
        _table = new PartLineTable(Table);
    }

    public override void Stage(MappedRow row)
    {
        string? job = Target.Personal.Id(row.Needed(_job));
        PartLine? line = _line.Read(row);
        DateTime? updated = row.Time(_updated);
        if (line is null)
        {
            row.Fail(_job, ReasonCode.Missing, "The row names neither a part number nor a description.", "Fill in the part number.");
        }

        if (row.Fault is null)
        {
            _table.Add(Target.Map.JobPrefix + job, line!.Value, 1, updated, RowDigest(row), row.Line);
        }
    }
}
