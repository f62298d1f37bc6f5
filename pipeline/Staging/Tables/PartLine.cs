using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>Fields of one part line: of a row, or of one group of columns in a row.</summary>
internal sealed class PartLineFields
{
    private static readonly string[] PartFields = ["part", "description", "quantity", "price", "from_van", "supplier"];
    private readonly CachedField<PartCell> _part;
    private readonly CachedField<(PartWords Words, TextTokens? Tokens)> _description;
    private readonly PersonalCells _personal;
    private readonly CachedField<int?> _quantity;
    private readonly CachedField<decimal?> _price;
    private readonly CachedField<bool?> _fromVan;
    private readonly CachedField<string?> _supplier;

    /// <summary>Fields of the row itself (group null), or of a group.</summary>
    public PartLineFields(StageTarget target, int? group)
    {
        (FieldMap map, PersonalCells personal, ComponentClassifier components) = (target.Map, target.Personal, target.Tools.Words.Components.For(target.Personal.Words.Languages));
        _personal = personal;
        MappedField Field(string name) => group is { } g ? map.Field(name, g) : map.Field(name);
        Fields = group is null ? [.. PartFields.Select(Field)] : [];
        _part = new(Field("part"), (row, field) => PartCellReader.Read(row, field, row.Code(field), personal, components));
        _description = new(Field("description"), (row, field) => PartWords.Parse(personal.Text(row.Word(field)), components) is var words && words.Text is { } text ? (words, new TextTokens(text)) : default);
        _quantity = new(Field("quantity"), static (row, field) => row.Quantity(field));
        _price = new(Field("price"), static (row, field) => row.Money(field));
        _fromVan = new(Field("from_van"), static (row, field) => row.Flag(field));
        _supplier = new(Field("supplier"), (row, field) => map.Supplier ?? personal.Word(row, field, row.Word(field)));
    }

    /// <summary>The fields of the row itself that tell the part, mapped or not; none of a group.</summary>
    public IReadOnlyList<MappedField> Fields { get; }

    /// <summary>True when the file gives a part number or a description.</summary>
    public bool IsMapped => _part.IsMapped || _description.IsMapped;

    /// <summary>Who supplied the parts of the row, or null if it does not say.</summary>
    public string? Supplier(MappedRow row) => _supplier.Read(row);

    /// <summary>The line, or null where neither number nor description is there.</summary>
    public PartLine? Read(MappedRow row)
    {
        (CodeText part, PartWords words) = _part.Read(row);
        (PartWords description, TextTokens? tokens) = _description.Read(row);
        description = tokens is not null ? description with { Text = _personal.Customer.Without(row, tokens) }
            : words.Text is { } text ? words with { Text = _personal.Customer.Without(row, new TextTokens(text)) }
            : words;
        int? quantity = _quantity.Read(row);
        decimal? price = _price.Read(row);
        return part.Raw is null && description.Text is null ? null : new PartLine(part, description, quantity ?? 1, price, _fromVan.Read(row), _supplier.Read(row));
    }
}

/// <summary>Reads cells for parts.</summary>
internal static class PartCellReader
{
    /// <summary>A number, the words that stand in its place, or both.</summary>
    public static PartCell Read(MappedRow row, MappedField field, string? cell, PersonalCells personal, ComponentClassifier components) =>
        NumberAndNameText.TryRead(cell, out string number, out string name)
            ? new PartCell(CodeText.Parse(personal.Code(row, field, number)), PartWords.Parse(personal.Text(name), components))
            : NumberBesideNameText.TryRead(cell, out number, out string? beside)
            ? new PartCell(CodeText.Parse(personal.Code(row, field, number)), PartWords.Parse(personal.Text(beside), components))
            : PartCell.IsWords(cell, components, personal.Words) && personal.Text(cell) is { } words
                ? new PartCell(default, PartWords.Parse(words, components))
                : new PartCell(CodeText.Parse(personal.Code(row, field, cell)), default);
}

/// <summary>One part line as read.</summary>
internal readonly record struct PartLine(CodeText Part, PartWords Description, int Quantity, decimal? Price, bool? FromVan, string? Supplier);

/// <summary>The staged part lines of jobs.</summary>
internal sealed class PartLineTable(StagedTable table)
{
    private readonly TextColumn _jobs = table.Text("job_id");
    private readonly WordColumn _parts = table.Word("part_raw");
    private readonly WordColumn _keys = table.Word("part_key");
    private readonly WordColumn _descriptions = table.Word("description");
    private readonly WordColumn _components = table.Word("component");
    private readonly ValueColumn<int> _quantities = table.Value<int>("quantity");
    private readonly ValueColumn<bool> _fromVan = table.Value<bool>("from_van");
    private readonly WordColumn _suppliers = table.Word("supplier");
    private readonly ValueColumn<decimal> _prices = table.Value<decimal>("unit_price");
    private readonly ValueColumn<int> _groups = table.Value<int>("group_no");
    private readonly ValueColumn<DateTime> _updated = table.Value<DateTime>("updated_on");
    private readonly ValueColumn<bool> _withJob = table.Value<bool>("with_job_row");
    private readonly ValueColumn<UInt128> _hashes = table.Value<UInt128>(StagedSchema.RowHash.Name);
    private readonly ValueColumn<int> _sourceLines = table.Value<int>(StagedSchema.SourceLine.Name);

    /// <summary>Adds a line.</summary>
    /// <param name="jobId">Its job.</param>
    /// <param name="line">The line.</param>
    /// <param name="group">Position within the row, from 1.</param>
    /// <param name="updated">When the row was last changed; kept where it is not the job's row.</param>
    /// <param name="rowDigest">Digest of the row, or null for the job's own row, which has one.</param>
    /// <param name="sourceLine">Where the row stands.</param>
    public void Add(ReadOnlySpan<char> jobId, PartLine line, int group, DateTime? updated, UInt128? rowDigest, int sourceLine)
    {
        int at = table.At;
        _jobs.Set(at, jobId);
        _parts.Set(at, line.Part.Raw);
        _keys.Set(at, line.Part.Key);
        _descriptions.Set(at, line.Description.Text);
        _components.Set(at, line.Description.Component);
        _quantities.Set(at, line.Quantity);
        _fromVan.Set(at, line.FromVan);
        _prices.Set(at, line.Price);
        _suppliers.Set(at, line.Supplier);
        _groups.Set(at, group);
        _updated.Set(at, rowDigest is null ? null : updated);
        _withJob.Set(at, rowDigest is null);
        _hashes.Set(at, rowDigest);
        _sourceLines.Set(at, sourceLine);
        table.EndRow();
    }
}

