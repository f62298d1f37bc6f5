using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Lists of old numbers and what replaces them.</summary>
internal sealed class SupersessionsStager : TableStager
{
    private readonly MappedField _old, _new, _effective, _kind, _quantity;
    private readonly TextColumn _olds, _oldKeys, _news, _newKeys, _kinds;
    private readonly ValueColumn<DateOnly> _effectiveOn;
    private readonly ValueColumn<int> _quantities;

    public SupersessionsStager(StageTarget target)
        : base(target, "staged_supersessions")
    {
        FieldMap map = target.Map;
        (_old, _new, _effective, _kind, _quantity) = (map.Field("old_part"), map.Field("new_part"), map.Field("effective_on"), map.Field("kind"), map.Field("quantity"));
        (_olds, _oldKeys, _news, _newKeys) = (Table.Text("old_raw"), Table.Text("old_key"), Table.Text("new_raw"), Table.Text("new_key"));
        (_effectiveOn, _kinds, _quantities) = (Table.Day("effective_on"), Table.Text("kind"), Table.Int("quantity"));
    }

    public override void Stage(MappedRow row)
    {
        string? old = row.Code(_old);
        string? next = row.Code(_new);
        if (old is null)
        {
            row.Missing(_old);
        }

        DateOnly? effective = row.Day(_effective);
        string? kind = SupersessionKindText.Read(row.Span(_kind), next is not null);
        if (kind is null)
        {
            row.Skip(_kind, ReasonCode.UnknownWord);
            kind = next is null ? "no_longer_made" : "replaces";
        }

        int? quantity = row.Quantity(_quantity);
        if (kind != "no_longer_made" && next is null)
        {
            row.Missing(_new);
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        _olds.Set(at, old);
        _oldKeys.Set(at, CompactKey.Of(old));
        _news.Set(at, next);
        _newKeys.Set(at, next is null ? null : CompactKey.Of(next));
        _effectiveOn.Set(at, effective);
        _kinds.Set(at, kind);
        _quantities.Set(at, quantity ?? 1);
        EndRow(row, RowDigest(row));
    }
}
