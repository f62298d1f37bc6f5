using PartsSignal.Pipeline.Understanding;
using PartsSignal.Pipeline.Understanding.Evidence;
using PartsSignal.Pipeline.Understanding.Model;

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
        foreach (TruthTable table in set.Tables)
        {
            _tables++;
            double[] kinds = table.Sample.Columns.Count == 0 ? [.. KindModels.Names.Select(k => k == KindModels.None ? 1.0 : 0)] : model.SecondKinds.Chances(second.KindLevels(table.Sample));
            int best = Array.IndexOf(kinds, kinds.Max());
            string kind = KindModels.Names[best];
            bool kindRight = kind == table.Kind || table.AlsoRight.Contains(kind);
            bool kindAsked = kinds[best] < 0.7;
            Count(_kindBands, kinds[best], kindRight);
            _kinds += kindRight ? 1 : 0;
            if (kindAsked)
            {
                asked.Add($"{table.Sample.File}{string.Join('|', table.Sample.Columns.Select(c => c.Name).Order())} kind");
            }

            if (!kindRight)
            {
                _kindsAsked += kindAsked ? 1 : 0;
                _kindsSilent += kindAsked ? 0 : 1;
                log($"  {name} {set.Name} {table.Sample.File} {table.Sample.Sheet}: is {table.Kind}, taken for {kind} {kinds[best]:0.00} (right one {kinds[((IList<string>)KindModels.Names).IndexOf(table.Kind)]:0.00}) {(kindAsked ? "asked" : "SILENT")}");
            }

            (int bad, int badAsked) = kindRight && kind != KindModels.None && kind == table.Kind ? Columns(set, table, second, model, asked, log) : (0, 0);
            if (!kindRight && table.Kind != KindModels.None)
            {
                int lost = table.Essential.Count(e => e[0] != '+');
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

    private (int Bad, int Asked) Columns(TruthSet set, TruthTable table, SecondLook second, ReadingModel model, HashSet<string> asked, Action<string> log)
    {
        var choice = FieldChoice.Of(table.Kind, model.Second.Odds(table.Sample, table.Kind, (c, f) => second.Of(table.Sample, c, table.Kind, f)));
        int bad = 0, badAsked = 0;
        bool Right(int column, string field) => table.IsRight(table.Sample.Columns[column], field);
        for (int f = 0; f < choice.Fields.Count; f++)
        {
            string field = choice.Fields[f];
            int c = choice.Columns[f];
            if (c >= 0)
            {
                double p = FieldChoice.Chance(choice.Odds[c, f]);
                Count(_columnBands, p, Right(c, field));
                if (p < 0.5)
                {
                    asked.Add(table.Sample.File + table.Sample.Columns[c].Name);
                }
            }
            else
            {
                foreach (int open in Enumerable.Range(0, table.Sample.Columns.Count).Where(i => !choice.Columns.Contains(i) && FieldChoice.Chance(choice.Odds[i, f]) > 0.25))
                {
                    asked.Add(table.Sample.File + table.Sample.Columns[open].Name);
                }
            }
        }

        foreach (string field in table.Essential.Where(e => e[0] != '+'))
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
            int[] right = [.. Enumerable.Range(0, table.Sample.Columns.Count).Where(i => Right(i, field))];
            bool ask = right.Concat(c >= 0 ? [c] : []).Any(i => asked.Contains(table.Sample.File + table.Sample.Columns[i].Name));
            bad++;
            badAsked += ask ? 1 : 0;
            _essentialAsked += ask ? 1 : 0;
            _essentialSilent += ask ? 0 : 1;
            log($"  {name} {set.Name} {table.Sample.File} {table.Sample.Sheet} {table.Kind}: {field} is {string.Join(", ", right.Select(i => $"'{table.Sample.Columns[i].Name}' {FieldChoice.Chance(choice.Odds[i, at]):0.00}"))}, taken {(c < 0 ? "nothing" : $"'{table.Sample.Columns[c].Name}' {FieldChoice.Chance(choice.Odds[c, at]):0.00}")} {(ask ? "asked" : "SILENT")}");
        }

        foreach ((string header, IReadOnlyList<string> never) in table.Forbidden)
        {
            for (int f = 0; f < choice.Fields.Count; f++)
            {
                if (choice.Columns[f] >= 0 && never.Contains(choice.Fields[f]) && table.Sample.Columns[choice.Columns[f]].Name.Equals(header, StringComparison.OrdinalIgnoreCase))
                {
                    bool ask = FieldChoice.Chance(choice.Odds[choice.Columns[f], f]) < 0.5;
                    bad++;
                    badAsked += ask ? 1 : 0;
                    log($"  {name} {set.Name} {table.Sample.File} {table.Kind}: '{header}' must not be {choice.Fields[f]} {FieldChoice.Chance(choice.Odds[choice.Columns[f], f]):0.00} {(ask ? "asked" : "SILENT")}");
                }
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
