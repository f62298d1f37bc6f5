using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Registers of appliances.</summary>
internal sealed class UnitsStager : TableStager
{
    private readonly ApplianceFields _appliance;
    private readonly MappedField _installed, _removed;
    private readonly ValueColumn<DateOnly> _installedOn, _removedOn;

    public UnitsStager(StageTarget target)
        : base(target, "staged_units")
    {
        _appliance = new ApplianceFields(target.Map, Table, target.Tools);
        (_installed, _removed) = (target.Map.Field("installed_on"), target.Map.Field("removed_on"));
        (_installedOn, _removedOn) = (Table.Day("installed_on"), Table.Day("removed_on"));
    }

    public override void Stage(MappedRow row)
    {
        DateOnly? installed = row.Day(_installed);
        DateOnly? removed = row.Day(_removed);
        int at = Table.At;
        _appliance.Set(row, at);
        if (_appliance.IsNobody)
        {
            row.Fail(_installed, ReasonCode.Missing, "The row names neither serial, model nor place.", "Fill in the serial or the model.");
        }

        if (row.Fault is not null)
        {
            return;
        }

        _installedOn.Set(at, installed);
        _removedOn.Set(at, removed);
        EndRow(row, RowDigest(row));
    }
}
