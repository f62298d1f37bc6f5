using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>A number on a part or a model, with the key under which it meets itself.</summary>
/// <param name="Raw">As typed; null: none.</param>
/// <param name="Key">Its compact key; null: nothing of it is a letter or a digit.</param>
internal readonly record struct CodeText(string? Raw, string? Key)
{
    /// <summary>The number with its key.</summary>
    public static CodeText Parse(string? raw)
    {
        string key = CompactKey.From(raw);
        return new CodeText(raw, key.Length == 0 ? null : key);
    }
}
