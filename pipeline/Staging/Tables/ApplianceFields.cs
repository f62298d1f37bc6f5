using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>The appliance and its place, as jobs and the register both write them. Customer cells are only hashed.</summary>
internal sealed class ApplianceFields(Func<string, MappedField> claim, StagedTable table, StageTarget target)
{
    private readonly MappedField _serial = claim("serial");
    private readonly MappedField _name = claim("customer_name");
    private readonly MappedField _phone = claim("phone");
    private readonly MappedField _address = claim("address");
    private readonly CachedField<(string? Name, bool IsGroup)> _type = new(claim("appliance_type"), (row, field) => WithGroup(PlainFields.ApplianceType(row, field, target.Tools.Words.Appliances, target.Personal)));
    private readonly CachedField<string?> _brand = new(claim("brand"), (row, field) => target.Personal.Word(row, field, row.Word(field)));
    private readonly CachedField<CodeText> _model = new(claim("model"), (row, field) => CodeText.Parse(target.Personal.Code(row, field, row.Code(field, lesser: true))));
    private readonly ValueColumn<UInt128> _serialKeys = table.Value<UInt128>("serial_key");
    private readonly ValueColumn<bool> _shortSerials = table.Value<bool>("serial_is_short");
    private readonly ValueColumn<UInt128> _placeKeys = table.Value<UInt128>("place_key");
    private readonly WordColumn _types = table.Word("appliance_type");
    private readonly WordColumn _brands = table.Word("brand");
    private readonly WordColumn _models = table.Word("model_raw");
    private readonly WordColumn _modelKeys = table.Word("model_key");
    private readonly WordColumn _candidates = table.Word("serial_candidates");
    private readonly WordColumn _faults = table.Word("serial_fault");

    /// <summary>Type of the last row, or null if not given.</summary>
    public string? Type { get; private set; }

    /// <summary>True when the last row's own type is a group of appliances: it may be any of them.</summary>
    public bool IsGroup { get; private set; }

    /// <summary>True when the customer of the last row is to be left out.</summary>
    public bool IsForgotten { get; private set; }

    /// <summary>True when serial, model, and place of the last row are all unknown.</summary>
    public bool IsNobody { get; private set; }

    /// <summary>Reads the row's appliance into the columns.</summary>
    /// <param name="row">The row.</param>
    /// <param name="at">Its place.</param>
    /// <param name="said">The complaint; a type that it names counts where no column says one.</param>
    public void Set(MappedRow row, int at, ComplaintText? said = null)
    {
        string? brand = _brand.Read(row);
        CodeText model = _model.Read(row);
        (string? type, IsGroup) = _type.Read(row);
        Type = type ?? said?.ApplianceType;
        _types.Set(at, Type);
        _brands.Set(at, brand);
        _models.Set(at, model.Raw);
        _modelKeys.Set(at, model.Key);
        SetSerial(row, at, brand);
        UInt128? place = PlaceText.Digest(row.Raw(_phone), row.Raw(_address), row.Raw(_name));
        IsForgotten = target.Personal.IsForgotten(row);
        _placeKeys.Set(at, IsForgotten ? null : place);
        IsNobody = place is null && model.Raw is null && row.Raw(_serial).IsEmpty;
    }

    private static (string? Name, bool IsGroup) WithGroup(string? type) => (type, ApplianceNames.IsGroup(type));

    private void SetSerial(MappedRow row, int at, string? brand)
    {
        ReadOnlySpan<char> serial = row.CodeSpan(_serial);
        UInt128? digest = SerialKey.Digest(brand, serial, out bool isShort);
        _serialKeys.Set(at, digest);
        _shortSerials.Set(at, isShort ? true : null);
        SerialReading reading = digest is not null && !isShort ? target.Tools.Serials(brand, serial) : default;
        _candidates.Set(at, reading.Candidates);
        _faults.Set(at, reading.Fault);
    }
}
