using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging.Kinds;

/// <summary>The appliance and its place, as jobs and the register both write them. Customer cells are only hashed.</summary>
internal sealed class ApplianceFields(FieldMap map, StagedTable table, StagingTools tools)
{
    private const string OtherAppliance = "other";
    private readonly MappedField _serial = map.Field("serial");
    private readonly MappedField _name = map.Field("customer_name");
    private readonly MappedField _phone = map.Field("phone");
    private readonly MappedField _address = map.Field("address");
    private readonly MappedField _email = map.Field("email");
    private readonly MappedField _type = map.Field("appliance_type");
    private readonly MappedField _brand = map.Field("brand");
    private readonly MappedField _model = map.Field("model");
    private readonly MappedField _made = map.Field("made_on");
    private readonly TextColumn _serialKeys = table.Text("serial_key");
    private readonly TextColumn _placeKeys = table.Text("place_key");
    private readonly WordColumn _types = table.Word("appliance_type");
    private readonly WordColumn _brands = table.Word("brand");
    private readonly WordColumn _models = table.Word("model_raw");
    private readonly WordColumn _modelKeys = table.Word("model_key");
    private readonly WordColumn _confusables = table.Word("model_confusable");
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
        string? brand = row.Word(_brand);
        string? model = row.Code(_model, lesser: true);
        string modelKey = CompactKey.Of(model);
        string? typeText = row.Word(_type);
        Type = tools.Words.Appliances.Find(typeText) ?? (typeText is null ? null : OtherAppliance);
        _types.Set(at, Type);
        _brands.Set(at, brand);
        _models.Set(at, model);
        _modelKeys.Set(at, modelKey.Length == 0 ? null : modelKey);
        _confusables.Set(at, modelKey.Length == 0 ? null : CompactKey.Confusable(modelKey));
        SetSerial(row, at, brand);
        SetMade(row, at);
        Span<char> identifier = stackalloc char[IdentityKey.IdentifierLength];
        bool placed = PlaceText.TryIdentify(tools.Key, row.Raw(_phone), row.Raw(_address), row.Raw(_name), identifier);
        _placeKeys.Set(at, placed ? identifier : default);
        IsNobody = !placed && model is null && row.Raw(_serial).IsEmpty;
    }

    /// <summary>Takes the row's own customer out of a free text that was scrubbed.</summary>
    public string WithoutCustomer(MappedRow row, string text)
    {
        text = TextScrubber.RemoveName(text, row.Raw(_name));
        text = TextScrubber.Remove(text, row.Raw(_phone), "[phone]");
        text = TextScrubber.RemoveAddress(text, row.Raw(_address));
        return TextScrubber.Remove(text, row.Raw(_email), "[e-mail]");
    }

    private void SetSerial(MappedRow row, int at, string? brand)
    {
        ReadOnlySpan<char> serial = row.CodeSpan(_serial);
        Span<char> identifier = stackalloc char[IdentityKey.IdentifierLength];
        bool usable = SerialKey.TryOf(tools.Key, brand, serial, identifier);
        _serialKeys.Set(at, usable ? identifier : default);
        SerialReading reading = usable ? tools.Serials(brand, serial.ToString()) : default;
        _candidates.Set(at, reading.Candidates);
        SerialFault = reading.Fault;
    }

    private void SetMade(MappedRow row, int at)
    {
        ReadOnlySpan<char> made = row.Span(_made);
        bool read = MadeOnText.TryRead(made, row.Style.Dates, out DateOnly from, out DateOnly to);
        if (!read && !EmptyMark.Is(made))
        {
            row.Skip(_made, ReasonCode.BadDate);
        }

        _madeFrom.Set(at, read ? from : null);
        _madeTo.Set(at, read ? to : null);
    }
}
