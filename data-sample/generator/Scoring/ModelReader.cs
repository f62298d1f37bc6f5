using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>Which families a model number as typed can mean, to a reader who knows the model list by heart.</summary>
internal static class ModelReader
{
    private static readonly ILookup<string, ModelFamily> ByKey = Catalogue.World.Families
        .SelectMany(f => f.Models.Select(m => (Key: Key(m.Number), Family: f)))
        .ToLookup(m => m.Key, m => m.Family);

    /// <summary>Families of the type that fit; all of the brand, or of the type, when nothing was typed or nothing fits.</summary>
    public static IReadOnlyList<ModelFamily> Families(string typed, string brandTyped, string type)
    {
        IReadOnlyList<ModelFamily> all = Catalogue.World.FamiliesByType[type];
        if (typed.Length > 0)
        {
            string key = Key(typed);
            ModelFamily[] exact = [.. ByKey[key].Where(f => f.Type == type).Distinct()];
            if (exact.Length > 0)
            {
                return exact;
            }

            ModelFamily[] near = [.. all.Where(f => f.Models.Any(m => LosesOne(Key(m.Number), key)))];
            if (near.Length > 0)
            {
                return near;
            }
        }

        ModelFamily[] ofBrand = [.. all.Where(f => brandTyped.Length > 2 && f.Brand.Name.StartsWith(brandTyped, StringComparison.OrdinalIgnoreCase))];
        return ofBrand.Length > 0 ? ofBrand : all;
    }

    private static string Key(string number) =>
        new([.. number.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit).Select(c => c == 'O' ? '0' : c)]);

    private static bool LosesOne(string whole, string typed)
    {
        if (whole.Length != typed.Length + 1)
        {
            return false;
        }

        int at = 0;
        while (at < typed.Length && whole[at] == typed[at])
        {
            at++;
        }

        return whole.AsSpan(at + 1).SequenceEqual(typed.AsSpan(at));
    }
}
