using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Staging.Kinds;

/// <summary>A number on a part or a model, with the keys under which it meets itself.</summary>
/// <param name="Raw">As typed; null: none.</param>
/// <param name="Key">Its compact key; null: nothing of it is a letter or a digit.</param>
/// <param name="Confusable">Its confusable key.</param>
internal readonly record struct CodeText(string? Raw, string? Key, string? Confusable)
{
    /// <summary>The number with its keys.</summary>
    public static CodeText Of(string? raw)
    {
        string key = CompactKey.Of(raw);
        return key.Length == 0 ? new CodeText(raw, null, null) : new CodeText(raw, key, CompactKey.Confusable(key));
    }
}
