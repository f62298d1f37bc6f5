using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Lists of models.</summary>
internal sealed class ModelsStager : TableStager
{
    private readonly MappedField _model, _family, _type, _brand, _first, _last;
    private readonly TextColumn _models, _keys, _patterns, _families, _types, _brands;
    private readonly ValueColumn<DateOnly> _firstMade, _lastMade;

    public ModelsStager(StageTarget target)
        : base(target, "staged_models")
    {
        FieldMap map = target.Map;
        (_model, _family, _type, _brand, _first, _last) =
            (map.Field("model"), map.Field("model_family"), map.Field("appliance_type"), map.Field("brand"), map.Field("first_made"), map.Field("last_made"));
        (_models, _keys) = (Table.Text("model_raw"), Table.Text("model_key"));
        (_patterns, _families) = (Table.Text("model_pattern"), Table.Text("model_family"));
        (_types, _brands, _firstMade, _lastMade) = (Table.Text("appliance_type"), Table.Text("brand"), Table.Day("first_made"), Table.Day("last_made"));
    }

    public override void Stage(MappedRow row)
    {
        string? model = row.Code(_model);
        if (model is null)
        {
            row.Missing(_model);
        }

        DateOnly? first = Made(row, _first, last: false);
        DateOnly? last = Made(row, _last, last: true);
        if (row.Fault is not null)
        {
            return;
        }

        int at = Table.At;
        string key = CompactKey.Of(model);
        string? type = row.Word(_type);
        _models.Set(at, model);
        _keys.Set(at, key);
        _patterns.Set(at, ModelWildcard.Pattern(model));
        _families.Set(at, row.Word(_family));
        _types.Set(at, Target.Tools.Words.Appliances.Find(type) ?? (type is null ? null : "other"));
        _brands.Set(at, row.Word(_brand));
        _firstMade.Set(at, first);
        _lastMade.Set(at, last);
        EndRow(row, RowDigest(row));
    }

    private static DateOnly? Made(MappedRow row, MappedField field, bool last)
    {
        ReadOnlySpan<char> text = row.Span(field);
        if (EmptyMark.Is(text))
        {
            return null;
        }

        if (MadeOnText.TryRead(text, row.Style.Dates, out DateOnly from, out DateOnly to))
        {
            return last ? to : from;
        }

        row.Skip(field, ReasonCode.BadDate);
        return null;
    }
}
