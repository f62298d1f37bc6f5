using PartsSignal.Pipeline.Understanding;

namespace PartsSignal.Benchmarks.Fitting;

/// <summary>Counts what was read right, asked and silent on shops that were not learned from.</summary>
internal sealed class Score(string name)
{
    private readonly (int All, int Right)[] _columnBands = new (int, int)[10];
    private readonly (int All, int Right)[] _kindBands = new (int, int)[10];
    private int _sets, _tables, _kinds, _kindsAsked, _kindsSilent, _right, _asked, _silent, _essentials, _essentialRight, _essentialAsked, _essentialSilent, _questions;

    /// <summary>Adds a set.</summary>
    public void Add(TruthSet set, SecondLook second, ReadingModel model, Action<string> log)
    {
        _sets++;
        var asked = new HashSet<string>();
        for (int t = 0; t < set.Truth.Count; t++)
        {
            TableTruth truth = set.Truth[t];
            _tables++;
            double[] kinds = truth.Columns.Count == 0 ? [.. KindModels.Names.Select(k => k == KindModels.None ? 1.0 : 0)] : model.SecondKinds.Chances(second.KindLevels(t));
            int best = Array.IndexOf(kinds, kinds.Max());
            string kind = KindModels.Names[best];
            bool kindRight = kind == truth.Kind || truth.AlsoRight.Contains(kind);
            bool kindAsked = truth.Columns.Count > 0 && TableReading.IsDoubtful([.. KindModels.Names.Select((k, i) => (k, kinds[i])).OrderByDescending(k => k.Item2)], second.First, t);
            Count(_kindBands, kinds[best], kindRight);
            _kinds += kindRight ? 1 : 0;
            if (kindAsked)
            {
                asked.Add($"kind {string.Join('|', set.Evidence.Tables[t].Columns.Select(c => c.Header).Order(StringComparer.Ordinal))}");
            }

            if (!kindRight)
            {
                _kindsAsked += kindAsked ? 1 : 0;
                _kindsSilent += kindAsked ? 0 : 1;
                log($"  {name} {set.Name} {truth.Name}: is {truth.Kind}, taken for {kind} {kinds[best]:0.00} (right one {kinds[((IList<string>)KindModels.Names).IndexOf(truth.Kind)]:0.00}) {(kindAsked ? "asked" : "SILENT")}");
            }

            (int bad, int badAsked) = kind != KindModels.None && kind == truth.Kind ? Columns(set, t, second, model, asked, log) : (0, 0);
            if (!kindRight && truth.Kind != KindModels.None)
            {
                int lost = truth.Essential.Count;
                _essentials += lost;
                _essentialAsked += kindAsked ? lost : 0;
                _essentialSilent += kindAsked ? 0 : lost;
            }

            _right += kindRight && bad == 0 ? 1 : 0;
            bool covered = kindRight ? bad == badAsked : kindAsked;
            _asked += (!kindRight || bad > 0) && covered ? 1 : 0;
            _silent += (!kindRight || bad > 0) && !covered ? 1 : 0;
        }

        _questions += asked.Count;
    }

    /// <summary>What was counted.</summary>
    public override string ToString() => FormattableString.Invariant($"""
        {name}: {_sets} sets, {_tables} tables: right {Share(_right, _tables)}, asked {Share(_asked, _tables)}, silent {Share(_silent, _tables)}
          kinds right {Share(_kinds, _tables)}, asked {_kindsAsked}, silent {_kindsSilent}; essentials {_essentials}: right {Share(_essentialRight, _essentials)}, asked {Share(_essentialAsked, _essentials)}, silent {Share(_essentialSilent, _essentials)}; questions a set {_questions / (double)_sets:0.0}
          columns {Bands(_columnBands)}
          kinds   {Bands(_kindBands)}
        """);

    private (int Bad, int Asked) Columns(TruthSet set, int t, SecondLook second, ReadingModel model, HashSet<string> asked, Action<string> log)
    {
        TableTruth truth = set.Truth[t];
        TableEvidence table = set.Evidence.Tables[t];
        var choice = FieldChoice.Of(truth.Kind, second.Odds(t, truth.Kind, model.Second));
        int bad = 0, badAsked = 0;
        bool Right(int column, string field) => truth.Columns[column].Right.Contains(field);
        var named = new HashSet<int>();
        foreach (ColumnDoubt doubt in ColumnDoubt.Of(choice, table))
        {
            named.UnionWith(doubt.Columns);
            asked.Add($"{truth.Kind} {doubt.Field} {string.Join('|', doubt.Columns.Select(c => table.Columns[c].Header))}");
        }

        for (int f = 0; f < choice.Fields.Count; f++)
        {
            if (choice.Columns[f] is var c and >= 0)
            {
                Count(_columnBands, FieldChoice.Chance(choice.Odds[c, f]), Right(c, choice.Fields[f]));
            }
        }

        foreach (string field in truth.Essential)
        {
            _essentials++;
            int c = choice.ColumnOf(field);
            bool found = Enumerable.Range(0, choice.Fields.Count).Any(f => choice.Columns[f] >= 0 && Right(choice.Columns[f], field) && Right(choice.Columns[f], choice.Fields[f]));
            if ((c >= 0 && Right(c, field)) || found)
            {
                _essentialRight++;
                continue;
            }

            int at = ((IList<string>)choice.Fields).IndexOf(field);
            int[] right = [.. Enumerable.Range(0, table.Columns.Count).Where(i => Right(i, field))];
            bool ask = right.Concat(c >= 0 ? [c] : []).Any(named.Contains);
            bad++;
            badAsked += ask ? 1 : 0;
            _essentialAsked += ask ? 1 : 0;
            _essentialSilent += ask ? 0 : 1;
            log($"  {name} {set.Name} {truth.Name} {truth.Kind}: {field} is {string.Join(", ", right.Select(i => $"'{table.Columns[i].Header}' {FieldChoice.Chance(choice.Odds[i, at]):0.00}"))}, taken {(c < 0 ? "nothing" : $"'{table.Columns[c].Header}' {FieldChoice.Chance(choice.Odds[c, at]):0.00}")} {(ask ? "asked" : "SILENT")}");
        }

        for (int f = 0; f < choice.Fields.Count; f++)
        {
            int c = choice.Columns[f];
            if (c >= 0 && truth.Columns[c].Never.Contains(choice.Fields[f]))
            {
                bool ask = named.Contains(c);
                bad++;
                badAsked += ask ? 1 : 0;
                log($"  {name} {set.Name} {truth.Name} {truth.Kind}: '{table.Columns[c].Header}' must not be {choice.Fields[f]} {FieldChoice.Chance(choice.Odds[c, f]):0.00} {(ask ? "asked" : "SILENT")}");
            }
        }

        return (bad, badAsked);
    }

    private static void Count((int All, int Right)[] bands, double chance, bool right)
    {
        int band = Math.Clamp((int)(chance * 10), 0, 9);
        bands[band] = (bands[band].All + 1, bands[band].Right + (right ? 1 : 0));
    }

    private static string Share(int part, int of) => FormattableString.Invariant($"{part} ({100.0 * part / Math.Max(1, of):0.0} %)");

    private static string Bands((int All, int Right)[] bands) => string.Join(' ', bands.Select((b, i) => FormattableString.Invariant($"{i / 10.0:0.0}:{b.Right}/{b.All}")));
}
