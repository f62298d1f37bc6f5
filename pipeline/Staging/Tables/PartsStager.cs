using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Price lists.</summary>
internal sealed class PartsStager : TableStager
{
    private readonly MappedField _part, _description, _component, _price, _size, _returnable, _warranty, _supplier;
    private readonly TextColumn _parts, _keys, _descriptions, _components, _sizes, _suppliers;
    private readonly ValueColumn<decimal> _prices;
    private readonly ValueColumn<int> _returnableDays, _warrantyDays;

    public PartsStager(StageTarget target)
        : base(target, "staged_parts")
    {
        FieldMap map = target.Map;
        (_part, _description, _component, _price) = (map.Field("part"), map.Field("description"), map.Field("component"), map.Field("price"));
        (_size, _returnable, _warranty, _supplier) = (map.Field("size_class"), map.Field("returnable_days"), map.Field("warranty_days"), map.Field("supplier"));
        (_parts, _keys, _descriptions, _components) = (Table.Text("part_raw"), Table.Text("part_key"), Table.Text("description"), Table.Text("component"));
        (_prices, _sizes, _suppliers) = (Table.Money("price"), Table.Text("size_class"), Table.Text("supplier"));
        (_returnableDays, _warrantyDays) = (Table.Int("returnable_days"), Table.Int("warranty_days"));
    }

    public override void Stage(MappedRow row)
    {
        string? part = row.Code(_part);
        if (part is null)
        {
            row.Missing(_part);
        }

        decimal? price = row.Money(_price);
        int? returnable = row.Quantity(_returnable, lesser: true);
        int? warranty = row.Quantity(_warranty, lesser: true);
        ReadOnlySpan<char> size = row.Span(_size);
        string? sizeClass = SizeClassText.Read(size);
        if (sizeClass is null && !EmptyMark.Is(size))
        {
            row.Skip(_size, ReasonCode.UnknownWord);
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        string? description = row.Word(_description);
        string? component = row.Word(_component)?.ToLowerInvariant().Replace(' ', '_');
        _parts.Set(at, part);
        _keys.Set(at, CompactKey.Of(part));
        _descriptions.Set(at, description);
        _components.Set(at, component ?? Target.Tools.Words.Components.Component(description));
        _prices.Set(at, price);
        _sizes.Set(at, sizeClass);
        _returnableDays.Set(at, returnable);
        _warrantyDays.Set(at, warranty);
        _suppliers.Set(at, Target.Map.Supplier ?? row.Word(_supplier));
        EndRow(row, RowDigest(row));
    }
}
