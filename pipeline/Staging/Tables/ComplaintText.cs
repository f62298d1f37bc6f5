using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>A complaint as typed, read once for all rows that say the same. Not for two threads at a time.</summary>
internal sealed class ComplaintText
{
    private readonly ComplaintWordTable _words;
    private readonly List<(string? Type, string Kind)> _kinds = [];

    private ComplaintText(string typed, ComplaintWordTable words)
    {
        _words = words;
        Code = ErrorCodeText.Find(typed);
        Scrubbed = TextScrubber.Scrub(typed);
        Pairs = LetterPairs.Create(Scrubbed);
    }

    /// <summary>The text without what is personal by its form; names and numbers of the row's customer may still stand in it.</summary>
    public string Scrubbed { get; }

    /// <summary>Its pairs of letters.</summary>
    public LetterPairs Pairs { get; }

    /// <summary>A displayed code that it names, or null if none.</summary>
    public string? Code { get; }

    /// <summary>Reads a complaint, or null if nothing was typed.</summary>
    public static ComplaintText? Parse(string? typed, ComplaintWordTable words) => typed is null ? null : new ComplaintText(typed, words);

    /// <summary>Kind of the complaint.</summary>
    /// <param name="text">The scrubbed text, or what is left of it without the customer.</param>
    /// <param name="type">Type of the appliance.</param>
    public string Kind(string text, string? type)
    {
        if (!ReferenceEquals(text, Scrubbed))
        {
            return _words.Kind(text, type);
        }

        // There are a handful of types, and most complaints are made of few of them.
        foreach ((string? known, string kind) in _kinds)
        {
            if (known == type)
            {
                return kind;
            }
        }

        _kinds.Add((type, _words.Kind(text, type)));
        return _kinds[^1].Kind;
    }
}
