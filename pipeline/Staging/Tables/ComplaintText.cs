using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging.Tables;

/// <summary>A complaint as typed, read once for all rows that say the same. Not for two threads at a time.</summary>
internal sealed class ComplaintText
{
    private readonly ComplaintWordTable _words;
    private readonly List<(string? Type, string Kind)> _kinds = [];

    // As typed but for what is personal by its form: a misspelt word that is not stored still tells the kind.
    private readonly TextTokens _read;

    private readonly string _typed;
    private readonly ApplianceNames _appliances;
    private string? _appliance;
    private bool _knowsAppliance;

    private ComplaintText(string typed, ComplaintWordTable words, ApplianceNames appliances, FileWords file)
    {
        (_typed, _appliances) = (typed, appliances);
        _words = words;
        Code = ErrorCodeText.Find(typed);
        var tokens = new TextTokens(typed);
        Scrubbed = TextScrubber.Scrub(tokens, file, out TextCuts forReading);
        Words = ReferenceEquals(Scrubbed, typed) ? tokens : new TextTokens(Scrubbed);
        _read = ReferenceEquals(Scrubbed, typed) ? tokens : new TextTokens(forReading.Apply());
    }

    /// <summary>The text without what nobody vouches for; words of the row's customer may still stand in it.</summary>
    public string Scrubbed { get; }

    /// <summary>Its words.</summary>
    public TextTokens Words { get; }

    /// <summary>The only type of appliance that it names, or null; most files say it in a column, so it is looked for on demand.</summary>
    public string? ApplianceType
    {
        get
        {
            (_appliance, _knowsAppliance) = (_knowsAppliance ? _appliance : _appliances.Named(_typed), true);
            return _appliance;
        }
    }

    /// <summary>A displayed code that it names, or null if none.</summary>
    public string? Code { get; }

    /// <summary>Reads a complaint, or null if nothing was typed.</summary>
    /// <param name="typed">The text.</param>
    /// <param name="words">Tells its kind.</param>
    /// <param name="appliances">Tells the appliance that it names.</param>
    /// <param name="file">Words that it may keep.</param>
    public static ComplaintText? Parse(string? typed, ComplaintWordTable words, ApplianceNames appliances, FileWords file) =>
        typed is null ? null : new ComplaintText(typed, words, appliances, file);

    /// <summary>Kind of the complaint.</summary>
    /// <param name="text">The scrubbed text, or what is left of it without the customer.</param>
    /// <param name="type">Type of the appliance.</param>
    /// <param name="row">The row.</param>
    /// <param name="customer">The row's customer, who is taken out of the text.</param>
    public string Kind(string text, string? type, MappedRow row, CustomerColumns customer)
    {
        if (!ReferenceEquals(text, Scrubbed))
        {
            return _words.Kind(customer.Without(row, _read), type);
        }

        // There are a handful of types, and most complaints are made of few of them.
        foreach ((string? known, string kind) in _kinds)
        {
            if (known == type)
            {
                return kind;
            }
        }

        _kinds.Add((type, _words.Kind(_read.Text, type)));
        return _kinds[^1].Kind;
    }
}
