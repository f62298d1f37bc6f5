namespace PartsSignal.Pipeline.Reading;

/// <summary>How one file, or one pattern of files, is read.</summary>
internal sealed record SourceMap
{
    /// <summary>File name or pattern relative to the input folder, for example <c>jobs-20*.csv</c>. In a zip: <c>old.zip/jobs-2019.csv</c>.</summary>
    public required string Files { get; init; }

    /// <summary>jobs, job_parts, part_orders, parts, supersessions, part_aliases, fitments, models, units, van_counts.</summary>
    public required string Kind { get; init; }

    /// <summary>Sheet of a workbook; null: the first.</summary>
    public string? Sheet { get; init; }

    /// <summary>
    /// True for a sheet that is read beside the first one because the map in <c>shop.json</c> names none. The first keeps the
    /// file's own name for its refused rows. Not public, because it is no key of <c>shop.json</c>.
    /// </summary>
    internal bool IsFurtherSheet { get; init; }

    /// <summary>utf-8, utf-16, windows-1252, iso-8859-1; null: detected.</summary>
    public string? Encoding { get; init; }

    /// <summary>comma, tab, semicolon, pipe; null: detected.</summary>
    public string? Separator { get; init; }

    /// <summary>Line of the header, counted from 1; null: found.</summary>
    public int? HeaderLine { get; init; }

    /// <summary>Date order of this file; null: the shop's.</summary>
    public string? DateOrder { get; init; }

    /// <summary>Number style of this file; null: the shop's.</summary>
    public string? NumberStyle { get; init; }

    /// <summary>Put before every job number of this file, so that two books can use the same numbers.</summary>
    public string? JobPrefix { get; init; }

    /// <summary>Supplier of every row (orders, price lists, aliases); null: from a column.</summary>
    public string? Supplier { get; init; }

    /// <summary>Fixed values for fields no column gives: field name to value, for example van to "1".</summary>
    public IReadOnlyDictionary<string, string> Fixed { get; init; } = new Dictionary<string, string>();

    /// <summary>Field name (design of the kind) to the file's header, or to several headers joined with a blank.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Columns { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>Parts columns that repeat across a job row: part, quantity, description, price, from_van of each group.</summary>
    public IReadOnlyList<IReadOnlyDictionary<string, string>> PartGroups { get; init; } = [];

    /// <summary>Words of this file for outcomes, yes/no and the like: field name, then file's word to ours.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Words { get; init; } =
        new Dictionary<string, IReadOnlyDictionary<string, string>>();

    /// <summary>Lists that say what the codes of a field mean, or give the field by the key of another table: field name to the list.</summary>
    public IReadOnlyDictionary<string, CodeList> Lists { get; init; } = new Dictionary<string, CodeList>();

    /// <summary>The map as staging reads it: each field that a list gives by a key is read from the column of that key, and the list turns it into words.</summary>
    public SourceMap WithKeyColumns()
    {
        var columns = new Dictionary<string, IReadOnlyList<string>>(Columns, StringComparer.Ordinal);
        foreach ((string field, CodeList list) in Lists.Where(l => l.Value.Column is not null))
        {
            columns.TryAdd(field, [list.Column!]);
        }

        return columns.Count == Columns.Count ? this : this with { Columns = columns };
    }

    /// <summary>The map with a field read from one column, which gives no other field then.</summary>
    /// <param name="field">Name of the field.</param>
    /// <param name="header">Header of the column.</param>
    public SourceMap WithColumn(string field, string header) =>
        this with { Columns = new Dictionary<string, IReadOnlyList<string>>(Columns.Where(c => !c.Value.Contains(header)), StringComparer.Ordinal) { [field] = [header] } };
}

/// <summary>A table that has words, numbers or names beside codes: reason codes, technicians, machines, parts.</summary>
/// <param name="File">Its file, relative to the input folder.</param>
/// <param name="Sheet">Sheet of a workbook; null: the first, or a text file.</param>
/// <param name="Code">Header of the column of codes.</param>
/// <param name="Meaning">Header of the column of what they mean.</param>
/// <param name="Column">
/// Header of the column of this file that holds the key, where it is not the field itself: a machine's number that gives its
/// model. Null: the codes stand in the field's own column.
/// </param>
internal sealed record CodeList(string File, string? Sheet, string Code, string Meaning, string? Column = null);
