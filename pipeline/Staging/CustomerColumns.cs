using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Staging;

/// <summary>The columns of a file that name or place the customer.</summary>
internal sealed class CustomerColumns
{
    private readonly MappedField _name;
    private readonly MappedField _phone;
    private readonly MappedField _address;
    private readonly MappedField _email;
    private readonly CustomerCells _cells = new();
    private long _named;

    /// <summary>Those of a file; a kind without customers has none.</summary>
    public CustomerColumns(FieldMap fields)
    {
        (_name, _phone) = (fields.Field("customer_name"), fields.Field("phone"));
        (_address, _email) = (fields.Field("address"), fields.Field("email"));
    }

    /// <summary>True when the file gives any of them.</summary>
    public bool IsAny => _name.IsMapped || _phone.IsMapped || _address.IsMapped || _email.IsMapped;

    /// <summary>Digest of the row's place, or null if nothing is usable.</summary>
    public UInt128? Digest(RowCells row) => IsAny ? PlaceText.Digest(Cell(row, _phone), Cell(row, _address), Cell(row, _name)) : null;

    /// <summary>The same of the current row as it is staged.</summary>
    public UInt128? Digest(MappedRow row) => IsAny ? PlaceText.Digest(row.Raw(_phone), row.Raw(_address), row.Raw(_name)) : null;

    /// <summary>A text without the row's own customer.</summary>
    public string Without(MappedRow row, TextTokens text)
    {
        if (!IsAny)
        {
            return text.Text;
        }

        Set(row, text);
        return _cells.Remove(text);
    }

    /// <summary>True when a value names the row's own customer.</summary>
    public bool IsNamed(MappedRow row, string value)
    {
        if (!IsAny)
        {
            return false;
        }

        row.CheckCustomer();
        var tokens = new TextTokens(value);
        Set(row, tokens);
        return _cells.IsIn(tokens);
    }

    /// <summary>True when a value holds the digits of the row's own phone.</summary>
    public bool IsPhone(MappedRow row, ReadOnlySpan<char> value)
    {
        if (!_phone.IsMapped || PlaceText.Digest(value, [], []) is not { } digest)
        {
            return false;
        }

        row.CheckCustomer();
        return PlaceText.Digest(row.Raw(_phone), [], []) == digest;
    }

    /// <summary>True when the row's customer is on a list.</summary>
    public bool IsOn(ForgottenCustomers list, MappedRow row) => IsAny && list.Holds(row.Raw(_phone), row.Raw(_address), row.Raw(_name));

    /// <summary>Phone, address and name of a row.</summary>
    public (string Phone, string Address, string Name) Texts(RowCells row) => (Cell(row, _phone).ToString(), Cell(row, _address).ToString(), Cell(row, _name).ToString());

    /// <summary>Adds the words of the customer's name.</summary>
    public void AddNames(RowCells row, HashSet<ulong> names)
    {
        if (_name.Column >= 0 && !row[_name.Column].IsWhiteSpace())
        {
            _named = 0;
            _cells.AddWords(row[_name.Column], names);
        }
    }

    // The words of a name serve all texts of its row.
    private void Set(MappedRow row, TextTokens text)
    {
        if (_named != row.Number)
        {
            _named = row.Number;
            _cells.SetNames(row.Raw(_name), row.Raw(_email));
        }

        _cells.SetAddress(row.Raw(_address), text);
    }

    private static ReadOnlySpan<char> Cell(RowCells row, MappedField field) => field.Column >= 0 ? row[field.Column].Trim() : default;
}
