using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>The appliance and its place, as jobs and the register both write them. Customer cells are only hashed.</summary>
internal sealed class ApplianceFields(FieldMap map, StagedTable table, StagingTools tools)
{
    private const string OtherAppliance = "other";
    private readonly MappedField _serial = map.Field("serial");
    private readonly MappedField _name = map.Field("customer_name");
    private readonly MappedField _phone = map.Field("phone");
    private readonly MappedField _address = map.Field("address");
    private readonly MappedField _email = map.Field("email");
    private readonly CachedField<string?> _type = new(map.Field("appliance_type"), (row, field) => ReadType(row, field, tools.Words.Appliances));
    private readonly CachedField<string?> _brand = new(map.Field("brand"), static (row, field) => row.Word(field));
    private readonly CachedField<CodeText> _model = new(map.Field("model"), static (row, field) => CodeText.Parse(row.Code(field, lesser: true)));
    private readonly CachedField<(DateOnly From, DateOnly To)?> _made = new(map.Field("made_on"), ReadMade);
    private readonly ValueColumn<UInt128> _serialKeys = table.Identifier("serial_key", tools.Key);
    private readonly ValueColumn<UInt128> _placeKeys = table.Identifier("place_key", tools.Key);
    private readonly WordColumn _types = table.Word("appliance_type");
    private readonly WordColumn _brands = table.Word("brand");
    private readonly WordColumn _models = table.Word("model_raw");
    private readonly WordColumn _modelKeys = table.Word("model_key");
    private readonly ValueColumn<DateOnly> _madeFrom = table.Day("made_on_from");
    private readonly ValueColumn<DateOnly> _madeTo = table.Day("made_on_to");
    private readonly WordColumn _candidates = table.Word("serial_candidates");

    /// <summary>Why the last serial breaks its brand's rule; null: it does not.</summary>
    public string? SerialFault { get; private set; }

    /// <summary>Type of the last row; null: not given.</summary>
    public string? Type { get; private set; }

    /// <summary>True when serial, model, and place of the last row are all unknown.</summary>
    public bool IsNobody { get; private set; }

    /// <summary>Reads the row's appliance into the columns.</summary>
    public void Set(MappedRow row, int at)
    {
        string? brand = _brand.Read(row);
        CodeText model = _model.Read(row);
        Type = _type.Read(row);
        _types.Set(at, Type);
        _brands.Set(at, brand);
        _models.Set(at, model.Raw);
        _modelKeys.Set(at, model.Key);
        SetSerial(row, at, brand);
        (DateOnly From, DateOnly To)? made = _made.Read(row);
        _madeFrom.Set(at, made?.From);
        _madeTo.Set(at, made?.To);
        UInt128? place = PlaceText.Digest(row.Raw(_phone), row.Raw(_address), row.Raw(_name));
        _placeKeys.Set(at, place);
        IsNobody = place is null && model.Raw is null && row.Raw(_serial).IsEmpty;
    }

    /// <summary>A complaint without the row's own customer.</summary>
    public string WithoutCustomer(MappedRow row, ComplaintText complaint)
    {
        string text = complaint.Scrubbed;
        if (!TextScrubber.MayName(complaint.Pairs, row.Raw(_name), row.Raw(_phone), row.Raw(_address), row.Raw(_email)))
        {
            return text;
        }

        text = TextScrubber.RemoveName(text, row.Raw(_name));
        text = TextScrubber.Remove(text, row.Raw(_phone), "[phone]");
        text = TextScrubber.RemoveAddress(text, row.Raw(_address));
        return TextScrubber.Remove(text, row.Raw(_email), "[e-mail]");
    }

    private static string? ReadType(MappedRow row, MappedField field, SynonymTable appliances)
    {
        string? typed = row.Word(field);
        return appliances.Find(typed) ?? (typed is null ? null : OtherAppliance);
    }

    private static (DateOnly From, DateOnly To)? ReadMade(MappedRow row, MappedField field)
    {
        ReadOnlySpan<char> made = row.Span(field);
        if (MadeOnText.TryRead(made, row.Style.Dates, out DateOnly from, out DateOnly to))
        {
            return (from, to);
        }

        if (!EmptyMark.Is(made))
        {
            row.Skip(field, ReasonCode.BadDate);
        }

        return null;
    }

    private void SetSerial(MappedRow row, int at, string? brand)
    {
        ReadOnlySpan<char> serial = row.CodeSpan(_serial);
        UInt128? digest = SerialKey.Digest(brand, serial);
        _serialKeys.Set(at, digest);
        SerialReading reading = digest is not null ? tools.Serials(brand, serial) : default;
        _candidates.Set(at, reading.Candidates);
        SerialFault = reading.Fault;
    }
}
