using System.Globalization;
using PartsSignal.Analysis.Sql;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>Says how a shop's van plan knows part numbers where its jobs name parts in words.</summary>
/// <param name="Sentence">In one or two sentences.</param>
public sealed record PartsInWords(string Sentence)
{
    private const double WorthSaying = 0.05;

    /// <summary>The sentence for a store, or null where nearly all part lines have numbers or none tells its part.</summary>
    /// <param name="database">A session over the store.</param>
    public static PartsInWords? Of(Database database)
    {
        database.Run("macros/told_part_lines.sql");
        Dictionary<string, long> lines = database.Read<LinesTold>("queries/van_plan/part_lines_told.sql").ToDictionary(l => l.ToldBy, l => l.Lines, StringComparer.Ordinal);
        long all = lines.Values.Sum(), byModel = lines.GetValueOrDefault("model");
        return lines.ContainsKey("words")
            ? new("Your files name parts in words, and no list says which part number fits which model. So these lists go by model family and part: find the number for the model before you order. Prices are typical ones unless your price list has one price for that part.")
            : byModel > 0 && byModel >= WorthSaying * all
            ? new(string.Create(CultureInfo.InvariantCulture, $"{byModel:N0} of {all:N0} part lines name the part in words. Their part numbers come from your lists, which have exactly one such part for the model."))
            : null;
    }

    private sealed record LinesTold(string ToldBy, long Lines);
}
