using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Registers of appliances.</summary>
internal sealed class UnitsStager : ListStager
{
    private readonly ApplianceFields _appliance;
    private readonly MappedField _installed;

    public UnitsStager(StageTarget target)
        : base(target, "units")
    {
        _appliance = new ApplianceFields(Claim, Table, target.Tools);
        _installed = target.Map.Field("installed_on");
    }

    protected override void Check(MappedRow row, int at)
    {
        _appliance.Set(row, at);
        if (_appliance.IsNobody)
        {
            row.Fail(_installed, ReasonCode.Missing, "The row names neither serial, model nor place.", "Fill in the serial or the model.");
        }
    }
}
