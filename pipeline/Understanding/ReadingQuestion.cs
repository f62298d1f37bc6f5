namespace PartsSignal.Pipeline.Understanding;

/// <summary>Something only the shop can say.</summary>
/// <param name="Key">Name by which it is answered, the same at every inspection.</param>
/// <param name="File">The file.</param>
/// <param name="Sheet">Sheet of a workbook; null: a text file.</param>
/// <param name="Column">The column taken if nobody answers; null: none.</param>
/// <param name="Field">The field that is asked for; null: not about one.</param>
/// <param name="Text">The question, in a shop owner's words.</param>
/// <param name="Choices">What can be answered.</param>
/// <param name="Examples">Up to three cells of each column concerned; personal ones masked.</param>
/// <param name="Consequence">What depends on it.</param>
/// <param name="Default">What holds if nobody answers.</param>
/// <param name="Weight">How much depends on it: larger first.</param>
internal sealed record ReadingQuestion(
    string Key,
    string File,
    string? Sheet,
    string? Column,
    string? Field,
    string Text,
    IReadOnlyList<QuestionChoice> Choices,
    IReadOnlyList<string> Examples,
    string Consequence,
    string Default,
    double Weight)
{
    /// <summary>Tables of the same columns that the answer holds for as well.</summary>
    public IReadOnlyList<(string File, string? Sheet)> Also { get; init; } = [];
}

/// <summary>A possible answer.</summary>
/// <param name="Value">What is written down.</param>
/// <param name="Label">What it means.</param>
internal sealed record QuestionChoice(string Value, string Label);
