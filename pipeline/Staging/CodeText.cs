using PartsSignal.Analysis.CrossReference;
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
