using System.Data.Common;
using PartsSignal.Analysis.Sql;
using PartsSignal.Analysis.Statistics;
using PartsSignal.Analysis.Statistics.Intervals;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>What a typed number was found to be.</summary>
/// <param name="Card">The part; null: the number is unknown, or means several parts.</param>
/// <param name="Meanings">Catalogue numbers it may stand for.</param>
/// <param name="Suggestions">Known numbers close to it, where it means nothing.</param>
public sealed record PartLookup(PartCard? Card, IReadOnlyList<string> Meanings, IReadOnlyList<NumberSuggestion> Suggestions);

/// <summary>Reads part cards from a store.</summary>
public static class PartCardReader
{
    /// <summary>The card of a number, by any old number or a supplier's own.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="typed">The number as typed.</param>
    /// <param name="asOf">Follows the arrows known on this day; null: those the store was built with.</param>
    public static PartLookup Find(Database database, string typed, DateOnly? asOf)
    {
        database.Run("macros/compact_key.sql");
        string key = CompactKey.From(typed);
        IReadOnlyList<(string Number, string Current, string Basis)> meanings = key.Length == 0 ? [] : database.Read(
            "queries/part_cards/number_meanings.sql", r => (r.GetString(0), r.GetString(1), r.GetString(2)), ("typed", typed), ("typed_key", key));
        if (meanings.Select(m => m.Current).Distinct(StringComparer.Ordinal).Count() != 1)
        {
            IReadOnlyList<NumberSuggestion> close = meanings.Count > 0 || key.Length == 0
                ? []
                : new NumberSuggestions(database.Read("queries/part_cards/known_numbers.sql", r => (r.GetString(0), r.GetString(1)))).Closest(key, 5);
            return new PartLookup(null, [.. meanings.Select(m => m.Number)], close);
        }

        return new PartLookup(Read(database, typed, meanings[0].Number, meanings[0].Current, meanings[0].Basis, asOf), [meanings[0].Number], []);
    }

    private static PartCard Read(Database database, string typed, string number, string storedCurrent, string basis, DateOnly? asOf)
    {
        IReadOnlyList<PartArrow> arrows = database.Read("queries/part_cards/arrows.sql", ReadArrow, ("number", number));
        Resolution resolution = new SupersessionGraph(arrows.Where(a => a.New is not null).Select(a => new SupersessionArrow(a.Old, a.New!, Kind(a.Kind), a.Quantity, a.EffectiveOn)), asOf).Resolve(number);
        string current = asOf is null || resolution.Replacements.Any(r => r.Number == storedCurrent) ? storedCurrent : resolution.Replacements[0].Number;
        // the store's rows carry the number current when it was built, whatever day is asked about
        (string, object?) at = ("number", storedCurrent);
        ResultRunner.Prepare(database, asOf, "int_early_window", "int_fitted_parts", "int_part_followups");
        return new PartCard
        {
            Asked = typed,
            Number = number,
            Basis = basis,
            Current = current,
            Replacements = resolution,
            Arrows = arrows,
            Facts = database.Read("queries/part_cards/facts.sql", ReadFacts, at)[0],
            Aliases = database.Read("queries/part_cards/aliases.sql", r => new PartAlias(r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3)), at),
            Families = database.Read("queries/part_cards/families.sql", r => new PartFamily(r.GetString(0), r.GetString(1), r.GetInt64(2), r.Int(3), r.Day(4)), at),
            Suppliers = database.Read("queries/part_cards/suppliers.sql", ReadSupply, at),
            Prices = database.Read("queries/part_cards/prices.sql", r => new PartPrice(r.GetString(0), r.Int(1), r.GetInt64(2), r.GetDecimal(3), r.GetDecimal(4), r.GetDecimal(5)), at),
            Early = database.Read("queries/part_cards/early_failures.sql", r => Early(r.Int(0), r.GetInt64(1), r.GetInt64(2)), at)[0],
            OnHand = database.Read("queries/part_cards/on_hand.sql", r => new PartOnHand(r.GetString(0), r.GetInt64(1), r.Day(2)), at),
        };
    }

    private static PartArrow ReadArrow(DbDataReader r) =>
        new(r.GetString(0), r.Text(1), r.Day(2), r.GetString(3), r.Int(4), r.GetString(5), r.Int(6));

    private static PartFacts ReadFacts(DbDataReader r) => new(
        r.Text(1), r.Text(2), r.Money(3), r.Text(4), (int?)r.Long(5), (int?)r.Long(6), r.Text(7), r.GetBoolean(8), r.GetInt64(9), r.GetInt64(10), r.Day(11), r.GetString(12));

    private static PartSupply ReadSupply(DbDataReader r) => new(
        r.GetString(0), r.GetInt64(1), r.GetInt64(2), r.Day(3)!.Value, r.Day(4)!.Value, r.Money(5), r.Money(6), r.Money(7),
        r.GetInt64(8), r.Double(9), r.Double(10), r.GetInt64(11), Share(r.GetInt64(11), r.GetInt64(2), "no piece was bought"));

    private static EarlyFailure Early(int days, long followed, long failed) =>
        new(followed, failed, Share(failed, followed, $"no fitted piece could be followed for {days} days"));

    private static Estimate Share(long events, long trials, string missing) => trials > 0 ? Proportion.Wilson(events, trials) : Estimate.None(missing);

    private static SupersessionKind Kind(string kind) => kind switch
    {
        "kit_part" => SupersessionKind.KitPart,
        "alternative" => SupersessionKind.Alternative,
        _ => SupersessionKind.Replaces,
    };
}
