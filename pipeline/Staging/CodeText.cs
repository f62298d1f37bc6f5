using PartsSignal.Analysis.CrossReference;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>A part or model number with its matching key.</summary>
/// <param name="Raw">As typed, or null if empty.</param>
/// <param name="Key">Its compact key, or null if it has no letter or digit.</param>
internal readonly record struct CodeText(string? Raw, string? Key)
{
    /// <summary>The number with its key.</summary>
    public static CodeText Parse(string? raw)
    {
        string key = CompactKey.From(raw);
        return new CodeText(raw, key.Length == 0 ? null : key);
    }
}

/// <summary>A part's description and what component it names.</summary>
/// <param name="Text">As typed, or null if empty.</param>
/// <param name="Component">The component, or null if the words do not tell.</param>
internal readonly record struct PartWords(string? Text, string? Component)
{
    /// <summary>The description with its component.</summary>
    public static PartWords Parse(string? text, ComponentClassifier components) => new(text, components.Component(text));
}

/// <summary>A cell for a part: its number, what it is where the shop writes words there, or both.</summary>
/// <param name="Code">The number; empty where the cell holds words alone.</param>
/// <param name="Words">The words; empty where the cell holds a number alone.</param>
internal readonly record struct PartCell(CodeText Code, PartWords Words)
{
    private const int FewestLetters = 4;
    private const int FewestLettersInCapitals = 5;

    /// <summary>
    /// True for words: the tables know them, or all of them are words of the file's language; beside a number there are two. In
    /// capitals a short word may be a code.
    /// </summary>
    /// <param name="cell">The cell.</param>
    /// <param name="components">Tells components.</param>
    /// <param name="file">Words of the file.</param>
    public static bool IsWords(string? cell, ComponentClassifier components, FileWords file)
    {
        if (cell is null || cell.Count(char.IsLetter) < FewestLetters)
        {
            // PCB, TOC
            return cell is not null && cell.Length > 1 && cell.All(char.IsLetter) && components.Component(cell) is not null;
        }

        var part = PartPhrase.Parse(cell);
        bool known = Array.TrueForAll(part.All, w => w.AsSpan().ContainsAnyInRange('0', '9') || file.IsKnown(w, WordList.Hash(w)));
        return cell.AsSpan().ContainsAnyInRange('0', '9')
            ? known && part.Telling.Count() > 1 && part.Name is not null
            : components.Component(cell) is not null || (known && part.Name is not null && (cell.Any(char.IsLower) || part.Telling.Any(w => w.Length >= FewestLettersInCapitals)));
    }
}
