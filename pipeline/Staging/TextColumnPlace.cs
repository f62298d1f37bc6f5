using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A column of a file that holds words or codes by its map.</summary>
/// <param name="Column">Its place.</param>
/// <param name="Field">Name of its field.</param>
/// <param name="Label">The field's name for people.</param>
internal sealed record TextColumnPlace(int Column, string Field, string Label)
{
    /// <summary>Those of a file.</summary>
    public static IReadOnlyList<TextColumnPlace> Of(string kind, SourceMap map, FieldMap fields)
    {
        var places = new List<TextColumnPlace>();
        foreach (Field field in FieldCatalog.Of(kind).Where(f => f.Content is ContentClass.Text or ContentClass.Word or ContentClass.Code && f.Cleaner is not (Cleaner.ErrorCode or Cleaner.PartsList) && map.Columns.ContainsKey(f.Name)))
        {
            MappedField mapped = fields.Field(field.Name);
            if (mapped.Column >= 0)
            {
                places.Add(new TextColumnPlace(mapped.Column, mapped.Name, mapped.Label));
            }
        }

        return places;
    }
}
