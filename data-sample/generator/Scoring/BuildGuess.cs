using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>One possibility of family, build month and age, with its weight before the complaint is looked at.</summary>
internal sealed record BuildGuess(ModelFamily Family, int BuildMonth, double Age, double Weight)
{
    // days from built to installed, each about equally likely
    private static readonly double[] LagDays = [9, 23, 48, 87, 158];
    private static readonly double[] MeanLag = [FleetAges.MeanLagDays];

    /// <summary>Everything that what was typed about a unit leaves possible; dates that contradict each other are left out of account.</summary>
    public static IReadOnlyList<BuildGuess> All(Job job)
    {
        BuildGuess[] all = [.. Possible(job, job.Note.PurchasedDay, job.Note.StatedAge)];
        return all.Length > 0 ? all : [.. Possible(job, null, null)];
    }

    private static IEnumerable<BuildGuess> Possible(Job job, int? purchased, int? stated)
    {
        CallNote note = job.Note;
        Unit unit = job.Unit;
        bool serialRead = note.SerialTyped.Length > 0 && unit.Family.Brand.Serial.TellsDate;
        bool registered = unit.Owner.IsContract && note.SerialTyped.Length > 0;
        IReadOnlyList<(int From, int To)>? read = registered ? [(unit.BuildMonth, unit.BuildMonth)]
            : serialRead ? unit.Family.Brand.Serial.Intervals(unit.BuiltDay, job.OpenedDay)
            : null;
        int? installed = registered ? unit.InstalledDay : purchased;
        foreach (ModelFamily family in ModelReader.Families(note.ModelTyped, note.BrandTyped, unit.Family.Type))
        {
            int last = Math.Min(family.StopMonth, ShopCalendar.MonthIndex(job.OpenedDay));
            for (int month = Math.Max(0, family.LaunchMonth); month <= last; month++)
            {
                if (read is not null && !read.Any(r => month >= r.From && month <= r.To))
                {
                    continue;
                }

                foreach (BuildGuess guess in OfMonth(job, family, month, installed, stated, read is not null))
                {
                    yield return guess;
                }
            }
        }
    }

    private static IEnumerable<BuildGuess> OfMonth(Job job, ModelFamily family, int month, int? installed, int? stated, bool monthKnown)
    {
        double middle = ShopCalendar.MonthStart(month) + 14;
        if (installed is { } day)
        {
            double lag = FleetAges.LagBetween(day - middle - 15, day - middle + 15);
            double age = Math.Max(0, (job.OpenedDay - day) / ShopCalendar.DaysPerYear);
            double weight = lag * FleetAges.Weight(family, month, age) * (1 - Scraps(job, age));
            if (weight > 0)
            {
                yield return new BuildGuess(family, month, age, weight);
            }

            yield break;
        }

        foreach (double lag in monthKnown ? LagDays : MeanLag)
        {
            double age = (job.OpenedDay - middle - lag) / ShopCalendar.DaysPerYear;
            if (age < -0.04 || (stated is { } years && Math.Abs(age - years) > 0.5))
            {
                continue;
            }

            age = Math.Max(0, age);
            double weight = FleetAges.Weight(family, month, age) * (1 - Scraps(job, age));
            if (weight > 0)
            {
                yield return new BuildGuess(family, month, age, weight);
            }
        }
    }

    private static double Scraps(Job job, double age) => job.Unit.Owner.IsContract ? 0 : Wear.ScrapsAtOnce(age);
}

/// <summary>Which families a model number as typed can mean, to a reader who knows the model list by heart.</summary>
internal static class ModelReader
{
    private static readonly ILookup<string, ModelFamily> ByKey = Catalog.World.Families
        .SelectMany(f => f.Models.Select(m => (Key: Key(m.Number), Family: f)))
        .ToLookup(m => m.Key, m => m.Family);

    /// <summary>Families of the type that fit; all of the brand, or of the type, when nothing was typed or nothing fits.</summary>
    public static IReadOnlyList<ModelFamily> Families(string typed, string brandTyped, string type)
    {
        IReadOnlyList<ModelFamily> all = Catalog.World.FamiliesByType[type];
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
