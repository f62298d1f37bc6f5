namespace PartsSignal.Pipeline.Understanding;

/// <summary>What a table is taken for.</summary>
/// <param name="Table">The table.</param>
/// <param name="Key">Name by which its questions are answered: the file, and its sheet behind a bar.</param>
/// <param name="Kind">Its kind, or <see cref="KindModels.None"/>.</param>
/// <param name="Kinds">Chance of each kind, likeliest first.</param>
/// <param name="Choice">Its columns; null: it is of no kind.</param>
/// <param name="Doubts">Fields of which it is not certain which column gives them.</param>
internal sealed record TableReading(
    SampledTable Table,
    string Key,
    string Kind,
    IReadOnlyList<(string Kind, double Chance)> Kinds,
    FieldChoice? Choice,
    IReadOnlyList<ColumnDoubt> Doubts)
{
    // Chosen on shops that were held out: a table that is silently of the wrong kind costs far more than a question.
    private const double SureOfKind = 0.99;
    private const double NeedsOfAKind = 0.5;
    private const double NeedsOfATableLeftOut = 0.5;

    /// <summary>True when a person should say what the table is.</summary>
    public bool AsksKind { get; init; }

    /// <summary>True when somebody settled the kind.</summary>
    public bool IsAnswered { get; init; }

    /// <summary>
    /// Whether the chances leave a doubt, or a table that is left out would do as something, or what a kind needs is hardly
    /// there, or its rows name the same few things.
    /// </summary>
    /// <param name="kinds">Chances, likeliest first.</param>
    /// <param name="first">The table by itself and the others.</param>
    /// <param name="at">Its place.</param>
    public static bool IsDoubtful(IReadOnlyList<(string Kind, double Chance)> kinds, FirstLook first, int at)
    {
        double bestNeeded = first.Fits(at)[^1].Needed;
        return kinds[0].Chance < SureOfKind || (kinds[0].Kind == KindModels.None ? bestNeeded >= NeedsOfATableLeftOut : bestNeeded < NeedsOfAKind || CellDoubts.AreRepeated(first.Shop.Tables[at], first.Choice(at, kinds[0].Kind)));
    }
}
