using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.CrossReference;

/// <summary>What a typed number was found to be.</summary>
/// <param name="Card">The part, or null if the number is unknown, or means several parts.</param>
/// <param name="Meanings">Catalog numbers it may stand for.</param>
/// <param name="Suggestions">Known numbers close to it, where it means nothing.</param>
public sealed record PartLookup(PartCard? Card, IReadOnlyList<string> Meanings, IReadOnlyList<NumberSuggestion> Suggestions);

/// <summary>Reads part cards from a store.</summary>
public static class PartCardReader
{
    /// <summary>The card of a number, by any old number or a supplier's own.</summary>
    /// <param name="database">A session over the store.</param>
    /// <param name="typed">The number as typed.</param>
    /// <param name="asOf">Follows the arrows known on this day, or null for those the store was built with.</param>
    public static PartLookup Find(Database database, string typed, DateOnly? asOf)
    {
        database.Run("macros/compact_key.sql");
        string key = CompactKey.From(typed);
        IReadOnlyList<Meaning> meanings = key.Length == 0 ? [] : database.Read<Meaning>(
            "queries/part_cards/number_meanings.sql", ("typed", typed), ("typed_key", key));
        if (meanings.Select(m => m.Current).Distinct(StringComparer.Ordinal).Count() != 1)
        {
            IReadOnlyList<NumberSuggestion> close = meanings.Count > 0 || key.Length == 0
                ? []
                : new NumberSuggestions(database.Read<KnownNumber>("queries/part_cards/known_numbers.sql").Select(n => (n.NumberKey, n.Number))).Closest(key, 5);
            return new PartLookup(null, [.. meanings.Select(m => m.Number)], close);
        }

        return new PartLookup(Read(database, typed, meanings[0].Number, meanings[0].Current, meanings[0].Basis, asOf), [meanings[0].Number], []);
    }

    private static PartCard Read(Database database, string typed, string number, string storedCurrent, string basis, DateOnly? asOf)
    {
        IReadOnlyList<PartArrow> arrows = database.Read<PartArrow>("queries/part_cards/arrows.sql", ("number", number));
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
            Facts = database.Single<PartFacts>("queries/part_cards/facts.sql", at),
            Aliases = database.Read<PartAlias>("queries/part_cards/aliases.sql", at),
            Families = database.Read<PartFamily>("queries/part_cards/families.sql", at),
            Suppliers = database.Read<PartSupply>("queries/part_cards/suppliers.sql", at),
            Prices = database.Read<PartPrice>("queries/part_cards/prices.sql", at),
            Early = database.Single<EarlyFailure>("queries/part_cards/early_failures.sql", at),
            OnHand = database.Read<PartOnHand>("queries/part_cards/on_hand.sql", at),
        };
    }

    private sealed record Meaning([Column("part_number")] string Number, [Column("current_number")] string Current, string Basis);

    private static SupersessionKind Kind(string kind) => kind switch
    {
        "kit_part" => SupersessionKind.KitPart,
        "alternative" => SupersessionKind.Alternative,
        _ => SupersessionKind.Replaces,
    };
}
