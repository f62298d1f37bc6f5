using System.Collections.Concurrent;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Reads the cells of a row that people may have typed anything into, without what is personal. Not for two threads at a time.</summary>
/// <param name="map">The file's fields.</param>
/// <param name="words">What its texts may keep.</param>
/// <param name="tools">The key and the customers who are left out.</param>
/// <param name="initials">True to keep initials of technicians instead of names, and of vans that are named after someone.</param>
/// <param name="rare">Values that were left out as too rare, with up to five of the customers who have them; shared by all threads.</param>
internal sealed class PersonalCells(FieldMap map, FileWords words, StagingTools tools, bool initials, RareValues rare)
{
    private const string IdentifierPrefix = "id-";
    private const int MostCodeDigits = 5;

    /// <summary>The row's customer.</summary>
    public CustomerColumns Customer { get; } = new(map);

    /// <summary>What the file's texts may keep.</summary>
    public FileWords Words => words;

    /// <summary>Free text that depends on no other cell.</summary>
    public string? Text(string? text) => text is null ? null : TextScrubber.Scrub(text, words);

    /// <summary>A value of a column of words, or null where it may be personal; the cell is tallied then.</summary>
    public string? Word(MappedRow row, MappedField field, string? value)
    {
        if (value is null)
        {
            return null;
        }

        // Vans go by names too: in a short count of stock each stands on few rows.
        bool technician = field.Name == "technician", people = technician || field.Name == "van";
        WordVerdict verdict = WordCellScrubber.Judge(value, field.Name, people, words);
        if (verdict == WordVerdict.Rare)
        {
            rare.Add(field.Name + '\t' + value, Customer.Digest(row) ?? (UInt128)(uint)row.Line);
        }

        if (verdict == WordVerdict.Stays || (verdict == WordVerdict.StaysUnlessCustomer && !Customer.IsNamed(row, value)))
        {
            return !initials || !people ? value : technician ? NameInitials.Of(value) : VanName.Key(value, tools.Key);
        }

        row.Skip(field, ReasonCode.Personal);
        return null;
    }

    /// <summary>True when the row's customer is to be left out.</summary>
    public bool IsForgotten(MappedRow row) => !tools.Forgotten.IsEmpty && Customer.IsOn(tools.Forgotten, row);

    /// <summary>What is left of a cell of codes, or null; the cell is tallied where something was cut.</summary>
    public string? Code(MappedRow row, MappedField field, string? value)
    {
        if (value is null)
        {
            return null;
        }

        string? code = CodeScrubber.Clean(value, field.Name, words);
        code = code is not null && !CodeScrubber.IsPlain(code) && Customer.IsPhone(row, code) ? null : code;
        if (!ReferenceEquals(code, value))
        {
            row.Skip(field, ReasonCode.Personal);
        }

        return code;
    }

    /// <summary>A displayed code, or null; the cell is tallied where it holds more than one.</summary>
    public string? ErrorCode(MappedRow row, MappedField field, string? value)
    {
        string? code = ErrorCodeText.Plain(Code(row, field, EmptyMark.Is(value) ? null : value));
        if (code is null || code.Count(char.IsAsciiDigit) <= MostCodeDigits)
        {
            return code;
        }

        row.Skip(field, ReasonCode.Personal);
        return null;
    }

    /// <summary>The number of a document: as typed where it is a code, else an identifier, which is the same in every file.</summary>
    public string? Id(string? value) =>
        value is null || CodeScrubber.IsPlain(value) || ReferenceEquals(CodeScrubber.Clean(value, "", Neutral), value) ? value
        : IdentifierPrefix + tools.Key.Identify(IdentityKey.Digest(IdentityRealm.Document, value));

    private FileWords Neutral => words.Neutral;
}

/// <summary>Values that were left out because too few customers of the file's first rows have them. Safe for several threads.</summary>
internal sealed class RareValues
{
    private readonly ConcurrentDictionary<string, HashSet<UInt128>> _values = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Counts a value.</summary>
    public void Add(string value, UInt128 customer)
    {
        HashSet<UInt128> customers = _values.GetOrAdd(value, _ => []);
        lock (customers)
        {
            if (customers.Count < FileWords.Customers)
            {
                customers.Add(customer);
            }
        }
    }

    /// <summary>Those that so many customers have after all.</summary>
    public IReadOnlyList<string> Common(int fewest) => [.. _values.Where(v => v.Value.Count >= Math.Max(2, fewest)).Select(v => v.Key).Order(StringComparer.Ordinal)];
}
