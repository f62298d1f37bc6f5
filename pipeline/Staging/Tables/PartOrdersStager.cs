using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Order lines.</summary>
internal sealed class PartOrdersStager : TableStager
{
    private const string UnknownSupplier = "unknown";
    private readonly MappedField _order, _supplier, _ordered, _received, _part, _other, _description, _quantity, _cost, _job, _returned, _reason, _updated;
    private readonly TextColumn _orders, _suppliers, _parts, _keys, _others, _otherKeys, _descriptions, _components, _jobs, _reasons;
    private readonly ValueColumn<DateOnly> _orderedOn, _receivedOn;
    private readonly ValueColumn<int> _quantities, _returnedQuantities;
    private readonly ValueColumn<decimal> _costs;
    private readonly ValueColumn<DateTime> _updatedOn;

    public PartOrdersStager(StageTarget target)
        : base(target, "staged_part_orders")
    {
        FieldMap map = target.Map;
        (_order, _supplier, _ordered, _received) = (map.Field("order_id"), map.Field("supplier"), map.Field("ordered_on"), map.Field("received_on"));
        (_part, _other, _description, _quantity) = (map.Field("part"), map.Field("other_part"), map.Field("description"), map.Field("quantity"));
        (_cost, _job, _returned, _reason, _updated) = (map.Field("unit_cost"), map.Field("job_id"), map.Field("returned_quantity"), map.Field("return_reason"), map.Field("updated_on"));
        (_orders, _suppliers, _parts, _keys) = (Table.Text("order_id"), Table.Text("supplier"), Table.Text("part_raw"), Table.Text("part_key"));
        (_others, _otherKeys) = (Table.Text("other_raw"), Table.Text("other_key"));
        (_descriptions, _components, _jobs, _reasons) = (Table.Text("description"), Table.Text("component"), Table.Text("job_id"), Table.Text("return_reason"));
        (_orderedOn, _receivedOn, _updatedOn) = (Table.Day("ordered_on"), Table.Day("received_on"), Table.Time("updated_on"));
        (_quantities, _returnedQuantities, _costs) = (Table.Int("quantity"), Table.Int("returned_quantity"), Table.Money("unit_cost"));
    }

    public override void Stage(MappedRow row)
    {
        string? order = row.Needed(_order);
        DateOnly ordered = row.NeededDay(_ordered);
        DateOnly? received = row.Day(_received);
        string? part = row.Code(_part);
        string? other = row.Code(_other);
        string? description = row.Word(_description);
        int? quantity = row.Quantity(_quantity);
        decimal? cost = row.Money(_cost);
        int? returned = row.Quantity(_returned);
        if (part is null && other is null && description is null)
        {
            row.Fail(_part, ReasonCode.Missing, "The row names neither a part number nor a description.", "Fill in the part number.");
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        (string key, string otherKey) = (CompactKey.Of(part), CompactKey.Of(other));
        string? job = row.Word(_job);
        string? reason = row.Text(_reason);
        _orders.Set(at, order);
        _suppliers.Set(at, Target.Map.Supplier ?? row.Word(_supplier) ?? UnknownSupplier);
        _orderedOn.Set(at, ordered);
        _receivedOn.Set(at, received);
        _parts.Set(at, part);
        _keys.Set(at, key.Length == 0 ? null : key);
        _others.Set(at, other);
        _otherKeys.Set(at, otherKey.Length == 0 ? null : otherKey);
        _descriptions.Set(at, description);
        _components.Set(at, Target.Tools.Words.Components.Component(description));
        _quantities.Set(at, quantity ?? 1);
        _costs.Set(at, cost);
        _jobs.Set(at, job is null ? null : Target.Map.JobPrefix + job);
        _returnedQuantities.Set(at, returned ?? 0);
        _reasons.Set(at, reason is null ? null : TextScrubber.Scrub(reason));
        _updatedOn.Set(at, row.Time(_updated));
        EndRow(row, RowDigest(row));
    }
}
