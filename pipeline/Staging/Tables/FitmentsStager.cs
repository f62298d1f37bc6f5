using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Lists of which part fits which model or family.</summary>
internal sealed class FitmentsStager : TableStager
{
    private readonly MappedField _model, _family, _part, _quantity;
    private readonly TextColumn _models, _modelKeys, _patterns, _families, _parts, _partKeys;
    private readonly ValueColumn<int> _quantities;

    public FitmentsStager(StageTarget target)
        : base(target, "staged_fitments")
    {
        (_model, _family, _part, _quantity) = (target.Map.Field("model"), target.Map.Field("model_family"), target.Map.Field("part"), target.Map.Field("quantity"));
        (_models, _modelKeys, _patterns, _families) = (Table.Text("model_raw"), Table.Text("model_key"), Table.Text("model_pattern"), Table.Text("model_family"));
        (_parts, _partKeys, _quantities) = (Table.Text("part_raw"), Table.Text("part_key"), Table.Int("quantity"));
    }

    public override void Stage(MappedRow row)
    {
        string? part = row.Code(_part);
        string? model = row.Code(_model);
        string? family = row.Word(_family);
        int? quantity = row.Quantity(_quantity);
        if (part is null)
        {
            row.Missing(_part);
        }

        if (model is null && family is null)
        {
            row.Fail(_model, ReasonCode.Missing, "The row names neither a model nor a family.", "Fill in one of them.");
        }

        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        string key = CompactKey.Of(model);
        _models.Set(at, model);
        _modelKeys.Set(at, key.Length == 0 ? null : key);
        _patterns.Set(at, ModelWildcard.Pattern(model));
        _families.Set(at, family);
        _parts.Set(at, part);
        _partKeys.Set(at, CompactKey.Of(part));
        _quantities.Set(at, quantity ?? 1);
        EndRow(row, RowDigest(row));
    }
}
