using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Turns the wildcards that lists print into LIKE patterns over compact model keys: <c>*</c> for any rest, <c>?</c>,
/// <c>#</c> and <c>_</c> for one character, a run of two or more lower-case x within an upper-case number for as many
/// characters, and <c>R/L</c> for either letter. A slash divides a choice only where a letter stands alone on either
/// side of it and the number has a digit: <c>WE46R/L</c> is a choice, <c>KP-200/A</c>, <c>448030/01</c> and
/// <c>AB/CD7</c> are not.
/// </summary>
internal static class ModelWildcard
{
    /// <summary>Divides the patterns of one number; no compact key holds it.</summary>
    public const char Divider = '|';

    private const int MostPatterns = 64;

    /// <summary>The patterns, divided by <see cref="Divider"/>, or null where the number has no wildcard.</summary>
    public static string? Pattern(string? model)
    {
        if (model is null)
        {
            return null;
        }

        bool wild = false;
        string[] patterns = [""];
        for (int i = 0; i < model.Length; i++)
        {
            string[] signs = Signs(model, ref i);
            wild |= signs.Length > 1 || signs[0] is "_" or "%";
            // more choices than anyone prints: any letter will do
            signs = signs.Length * patterns.Length > MostPatterns ? ["_"] : signs;
            patterns = [.. patterns.SelectMany(p => signs, (p, s) => p + s)];
        }

        return wild ? string.Join(Divider, patterns) : null;
    }

    // What may stand where the model has the sign at this place; a choice moves on to its last letter.
    private static string[] Signs(string model, ref int at)
    {
        char c = model[at];
        if (c is '?' or '#' or '_' || (c == 'x' && IsRun(model, at)))
        {
            return ["_"];
        }

        if (c is '*' or '%')
        {
            return ["%"];
        }

        var choice = new List<string> { CompactKey.From(c.ToString()) };
        while (IsLoneLetter(model, at) && at + 2 < model.Length && model[at + 1] == '/' && IsLoneLetter(model, at + 2) && model.Any(char.IsAsciiDigit))
        {
            at += 2;
            choice.Add(CompactKey.From(model[at].ToString()));
        }

        return [.. choice];
    }

    private static bool IsLoneLetter(string model, int at) =>
        char.IsAsciiLetter(model[at])
        && (at == 0 || !char.IsAsciiLetter(model[at - 1]))
        && (at + 1 == model.Length || !char.IsAsciiLetter(model[at + 1]));

    private static bool IsRun(string model, int at) =>
        ((at > 0 && model[at - 1] == 'x') || (at + 1 < model.Length && model[at + 1] == 'x')) && !model.Any(c => char.IsAsciiLetterLower(c) && c != 'x');
}
