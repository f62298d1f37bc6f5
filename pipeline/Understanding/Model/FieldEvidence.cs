using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Understanding.Evidence;

namespace PartsSignal.Pipeline.Understanding.Model;

/// <summary>The evidence for and against a column giving a field, were its table of a kind.</summary>
internal sealed class FieldEvidence
{
    private readonly ColumnFeatures _features;
    private static readonly int Classes = Enum.GetValues<ContentClass>().Length;
    private readonly Dictionary<TableSample, HeaderScores> _headers;
    private readonly Dictionary<(ColumnSample, string), double> _fits = [];

    /// <summary>Gathers what does not depend on kind and field.</summary>
    public FieldEvidence(IReadOnlyList<TableSample> tables, HeaderLexicon lexicon)
    {
        Relations = new ShopRelations(tables);
        _features = new ColumnFeatures(tables, Relations);
        _headers = tables.ToDictionary(t => t, t => new HeaderScores(lexicon, t));
    }

    private FieldEvidence(FieldEvidence of, HeaderLexicon lexicon) =>
        (Relations, _features, _headers) = (of.Relations, of._features, of._headers.Keys.ToDictionary(t => t, t => new HeaderScores(lexicon, t)));

    /// <summary>The same with other words for headers.</summary>
    public FieldEvidence With(HeaderLexicon lexicon) => new(this, lexicon);

    /// <summary>What the tables have in common.</summary>
    public ShopRelations Relations { get; }

    /// <summary>Names of the levels that <see cref="Of"/> gives.</summary>
    public IReadOnlyList<string> Names =>
        [.. _features.Names, .. _features.TableNames, .. SourceFields.Kinds.Select(k => "kind_" + k), "header", "header_rival", "header_elsewhere", "header_no_field", "header_of_others", "header_lead", "content_fit", .. Enum.GetNames<ContentClass>().Select(c => "class_" + c)];

    /// <summary>Levels of a table alone.</summary>
    public byte[] Of(TableSample table) => _features.Of(table);

    /// <summary>What a header says of a field, 0 to 1.</summary>
    public double Header(TableSample table, int column, string field) => _headers[table].Of(column, field);

    /// <summary>Levels, 0 to 15.</summary>
    public byte[] Of(TableSample table, int column, string kind, string field)
    {
        byte[] own = _features.Of(table.Columns[column]);
        byte[] whole = _features.Of(table);
        var levels = new byte[own.Length + whole.Length + SourceFields.Kinds.Count + 7 + Classes];
        own.CopyTo(levels, 0);
        whole.CopyTo(levels, own.Length);
        int at = own.Length + whole.Length;
        foreach (string k in SourceFields.Kinds)
        {
            levels[at++] = k == kind ? FeatureList.Top : (byte)0;
        }

        HeaderScores headers = _headers[table];
        double header = headers.Of(column, field);
        double others = headers.BestOfOthers(column, field);
        (double rival, double elsewhere, double none) = headers.Others(column, kind, field);
        levels[at++] = Level(header);
        levels[at++] = Level(rival);
        levels[at++] = Level(elsewhere);
        levels[at++] = Level(none);
        levels[at++] = Level(others);
        levels[at++] = Level(0.5 + ((header - Math.Max(rival, none)) / 2));
        levels[at++] = Level(Fit(table.Columns[column], field));
        levels[at + (int)ContentClasses.Of(field)] = FeatureList.Top;
        return levels;
    }

    private double Fit(ColumnSample column, string field) =>
        _fits.TryGetValue((column, field), out double fit) ? fit : _fits[(column, field)] = ContentClasses.Fit(field, column);

    private static byte Level(double score) => (byte)Math.Clamp((int)Math.Round(score * FeatureList.Top), 0, FeatureList.Top);
}
