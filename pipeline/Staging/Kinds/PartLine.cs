using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;

namespace PartsSignal.Pipeline.Staging.Kinds;

/// <summary>Fields of one part line: of a row, or of one group of columns in a row.</summary>
internal sealed class PartLineFields
{
    private readonly MappedField _part;
    private readonly MappedField _description;
    private readonly MappedField _quantity;
    private readonly MappedField _price;
    private readonly MappedField _fromVan;

    /// <summary>Fields of the row itself (group null), or of a group.</summary>
    public PartLineFields(FieldMap map, int? group)
    {
        MappedField Field(string name) => group is { } g ? map.Field(name, g) : map.Field(name);
        _part = Field("part");
        _description = Field("description");
        _quantity = Field("quantity");
        _price = Field("price");
        _fromVan = Field("from_van");
    }

    /// <summary>True when the file gives a part number or a description.</summary>
    public bool IsMapped => _part.IsMapped || _description.IsMapped;

    /// <summary>The line, or null where neither number nor description is there.</summary>
    public PartLine? Read(MappedRow row)
    {
        string? part = row.Code(_part);
        string? description = row.Word(_description);
        int? quantity = row.Quantity(_quantity);
        decimal? price = row.Money(_price);
        return part is null && description is null ? null : new PartLine(part, description, quantity ?? 1, price, row.Flag(_fromVan));
    }
}

/// <summary>One part line as read.</summary>
internal readonly record struct PartLine(string? Part, string? Description, int Quantity, decimal? Price, bool? FromVan);

/// <summary>The staged part lines of jobs.</summary>
internal sealed class PartLineTable(StagedTable table, StageTarget target)
{
    private readonly TextColumn _jobs = table.Text("job_id");
    private readonly WordColumn _parts = table.Word("part_raw");
    private readonly WordColumn _keys = table.Word("part_key");
    private readonly WordColumn _confusables = table.Word("part_confusable");
    private readonly WordColumn _descriptions = table.Word("description");
    private readonly WordColumn _components = table.Word("component");
    private readonly ValueColumn<int> _quantities = table.Int("quantity");
    private readonly ValueColumn<bool> _fromVan = table.Flag("from_van");
    private readonly ValueColumn<decimal> _prices = table.Money("unit_price");
    private readonly ValueColumn<int> _groups = table.Int("group_no");
    private readonly ValueColumn<DateTime> _updated = table.Time("updated_on");
    private readonly ValueColumn<bool> _withJob = table.Flag("with_job_row");
    private readonly RowStamp _stamp = new(table, target);

    /// <summary>Adds a line.</summary>
    public void Add(ReadOnlySpan<char> jobId, PartLine line, int group, bool withJob, DateTime? updated, ReadOnlySpan<char> rowHash, int sourceLine)
    {
        int at = table.At;
        string key = CompactKey.Of(line.Part);
        _jobs.Set(at, jobId);
        _parts.Set(at, line.Part);
        _keys.Set(at, key.Length == 0 ? null : key);
        _confusables.Set(at, key.Length == 0 ? null : CompactKey.Confusable(key));
        _descriptions.Set(at, line.Description);
        _components.Set(at, target.Tools.Words.Components.Component(line.Description));
        _quantities.Set(at, line.Quantity);
        _fromVan.Set(at, line.FromVan);
        _prices.Set(at, line.Price);
        _groups.Set(at, group);
        _updated.Set(at, updated);
        _withJob.Set(at, withJob);
        _stamp.Set(at, rowHash, sourceLine);
        table.EndRow();
    }
}
