using System.Text;
using PartsSignal.Analysis.CrossReference;

namespace PartsSignal.Pipeline.Cleaning;

/// <summary>
/// Turns the wildcards that lists print into a LIKE pattern over compact model keys: <c>*</c> for any rest, <c>?</c>,
/// <c>#</c> and <c>_</c> for one character, and a run of two or more lower-case x within an upper-case number for as
/// many characters.
/// </summary>
public static class ModelWildcard
{
    /// <summary>The pattern, or null where the number has no wildcard.</summary>
    public static string? Pattern(string? model)
    {
        if (model is null)
        {
            return null;
        }

        bool wild = false;
        var pattern = new StringBuilder();
        for (int i = 0; i < model.Length; i++)
        {
            char c = model[i];
            bool placeholder = c is '?' or '#' or '_' || (c == 'x' && IsRun(model, i));
            if (c is '*' or '%' || placeholder)
            {
                wild = true;
                pattern.Append(placeholder ? '_' : '%');
            }
            else
            {
                pattern.Append(CompactKey.Of(c.ToString()));
            }
        }

        return wild ? pattern.ToString() : null;
    }

    private static bool IsRun(string model, int at) =>
        ((at > 0 && model[at - 1] == 'x') || (at + 1 < model.Length && model[at + 1] == 'x')) && !model.Any(c => char.IsAsciiLetterLower(c) && c != 'x');
}
