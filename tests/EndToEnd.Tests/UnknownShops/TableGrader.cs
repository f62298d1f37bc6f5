using System.Text.RegularExpressions;

namespace PartsSignal.EndToEnd.Tests.UnknownShops;

internal enum Verdict { Right, Asked, Silent }

/// <summary>What came of one table, and of each of its essential fields.</summary>
internal sealed record TableGrade(TableTruth Table, bool KindRight, Verdict Verdict, IReadOnlyList<Verdict> Essential, IReadOnlyList<string> SilentFaults);

/// <summary>
/// Grades tables as tests/UnknownShops/grade.py does: right; asked, when each fault is named by a question; or silent.
/// Only questions count here, not remarks in running text.
/// </summary>
internal static partial class TableGrader
{
    private static readonly string[] Repeated = ["part", "description", "quantity", "price", "from_van", "on_hand"];

    public static IReadOnlyList<TableGrade> Grade(ShopTruth truth, ShopReading reading) => [.. truth.Files.Select(t => Grade(t, reading))];

    public static TableGrade Grade(TableTruth table, ShopReading reading)
    {
        SavedMap[] maps = [.. reading.Maps.Where(m => m.IsFor(table))];
        AskedQuestion[] questions = [.. reading.Questions.Where(q => q.IsAbout(table))];
        bool kindAsked = questions.Any(q => q.AsksKind);
        string kind = maps.FirstOrDefault()?.Kind ?? "none";
        bool kindRight = kind == table.Kind || table.KindOk.Contains(kind);
        var faults = new List<(string What, bool Asked)>();
        var essential = new List<Verdict>();
        if (!kindRight)
        {
            faults.Add(($"read as {kind}, is {table.Kind}", kindAsked));
            essential.AddRange(table.Essential.Select(_ => kindAsked ? Verdict.Asked : Verdict.Silent));
        }
        else if (kind == table.Kind && kind != "none")
        {
            (string Field, string Header)[] given = [.. maps.SelectMany(m => m.Columns)];
            foreach (string field in table.Essential)
            {
                (string What, bool Asked)? fault = Lost(table, field, given, questions);
                essential.Add(fault is not { } lost ? Verdict.Right : lost.Asked ? Verdict.Asked : Verdict.Silent);
                faults.AddRange(fault is { } found ? [found] : []);
            }

            faults.AddRange(table.Forbidden.SelectMany(f => given
                .Where(g => g.Header == ShopReading.Plain(f.Key) && f.Value.Contains(g.Field))
                .Select(g => ($"{f.Key} read as {g.Field}", questions.Any(q => Names(q, f.Key))))));
        }

        Verdict verdict = faults.Count == 0 ? Verdict.Right : faults.TrueForAll(f => f.Asked) ? Verdict.Asked : Verdict.Silent;
        return new TableGrade(table, kindRight, verdict, essential, [.. faults.Where(f => !f.Asked).Select(f => f.What)]);
    }

    // a header counts for its field, or for any other field that is right for it as well
    private static (string What, bool Asked)? Lost(TableTruth table, string field, (string Field, string Header)[] given, AskedQuestion[] questions)
    {
        IReadOnlyList<string> right = table.Columns[field];
        int got = right.Count(h => given.Any(g => g.Header == ShopReading.Plain(h) && (g.Field == field || RightFor(table, g.Field).Contains(h))));
        bool group = Repeated.Contains(field) && right.Select(h => Digits().Replace(h, "")).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1;
        if (got == right.Count || (got > 0 && !group))
        {
            return null;
        }

        string[] taken = [.. given.Where(g => g.Field == field).Select(g => g.Header)];
        bool asked = questions.Any(q => q.Field == field || right.Any(h => Names(q, h)) || taken.Any(h => Names(q, h)));
        return ($"{field}: {right[0]} not read", asked);
    }

    private static IEnumerable<string> RightFor(TableTruth table, string field) =>
        table.Columns.GetValueOrDefault(field, []).Concat(table.Columns.GetValueOrDefault("+" + field, []));

    private static bool Names(AskedQuestion question, string header)
    {
        string plain = ShopReading.Plain(header);
        return (question.Column is { } column && ShopReading.Plain(column) == plain)
            || question.Choices.Any(c => ShopReading.Plain(c) == plain)
            || ShopReading.Plain(question.Text).Contains($"'{plain}'", StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\d+|[\W_]+")]
    private static partial Regex Digits();
}
