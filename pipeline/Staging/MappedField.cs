namespace PartsSignal.Pipeline.Staging;

/// <summary>Where a field's text comes from in one file.</summary>
/// <param name="name">Name of the field, as in the map.</param>
/// <param name="columns">Columns, joined with a blank; empty: none.</param>
/// <param name="fixedValue">Text where no column gives any, or null if none.</param>
/// <param name="words">The file's words to ours, or null if none.</param>
internal sealed class MappedField(string name, int[] columns, string? fixedValue, IReadOnlyDictionary<string, string>? words)
{
    /// <summary>Name of the field.</summary>
    public string Name { get; } = name;

    /// <summary>Its name for people.</summary>
    public string Label { get; } = char.ToUpperInvariant(name[0]) + name[1..].Replace('_', ' ');

    /// <summary>Columns of the file.</summary>
    public int[] Columns { get; } = columns;

    /// <summary>The only column; below zero: there is none, or several.</summary>
    public int Column { get; } = columns.Length == 1 ? columns[0] : -1;

    /// <summary>Text where no column gives any.</summary>
    public string? Fixed { get; } = fixedValue;

    /// <summary>The file's words to ours.</summary>
    public IReadOnlyDictionary<string, string>? Words { get; } = words;

    /// <summary>True when the column holds the key of another table: what that table does not list is not known.</summary>
    public bool IsLookedUp { get; init; }

    /// <summary>True when the file or the map gives this field.</summary>
    public bool IsMapped => Columns.Length > 0 || Fixed is not null;
}
