using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Counts of what a van holds.</summary>
internal sealed class VanCountsStager : TableStager
{
    private readonly MappedField _van, _part, _onHand, _counted;
    private readonly TextColumn _vans, _parts, _keys;
    private readonly ValueColumn<int> _counts;
    private readonly ValueColumn<DateOnly> _countedOn;

    public VanCountsStager(StageTarget target)
        : base(target, "staged_van_counts")
    {
        (_van, _part, _onHand, _counted) = (target.Map.Field("van"), target.Map.Field("part"), target.Map.Field("on_hand"), target.Map.Field("counted_on"));
        (_vans, _parts, _keys) = (Table.Text("van"), Table.Text("part_raw"), Table.Text("part_key"));
        (_counts, _countedOn) = (Table.Int("on_hand"), Table.Day("counted_on"));
    }

    public override void Stage(MappedRow row)
    {
        string? van = row.Needed(_van);
        string? part = row.Code(_part);
        int? count = row.Quantity(_onHand);
        DateOnly? counted = row.Day(_counted);
        if (part is null)
        {
            row.Missing(_part);
        }

        if (count is null)
        {
            row.Missing(_onHand);
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        string key = CompactKey.Of(part);
        _vans.Set(at, van);
        _parts.Set(at, part);
        _keys.Set(at, key);
        _counts.Set(at, count!.Value);
        _countedOn.Set(at, counted);
        EndRow(row, RowDigest(row));
    }
}
