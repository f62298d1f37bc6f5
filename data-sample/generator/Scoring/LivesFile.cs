using System.Globalization;
using PartsSignal.SampleShop.World;
using PartsSignal.SampleShop.Writing;

namespace PartsSignal.SampleShop.Scoring;

/// <summary>The true lives: one row per family and cause.</summary>
internal static class LivesFile
{
    public static void Write(string folder)
    {
        using var file = new DelimitedFile(folder, "lives.csv", ',', DelimitedFile.Utf8);
        file.Row("family", "appliance_type", "cause", "component", "shape", "scale_years", "part_number", "rate_at_1", "rate_at_5", "rate_at_10");
        foreach (ModelFamily family in Catalogue.World.Families)
        {
            for (int k = 0; k < family.Causes.Count; k++)
            {
                FamilyCause cause = family.Causes[k];
                file.Row(
                    family.Code,
                    family.Type,
                    cause.Cause.Name,
                    cause.Cause.Component,
                    Number(cause.Cause.Shape),
                    Number(cause.ScaleYears),
                    cause.Part?.Current.Number ?? "",
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 1)),
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 5)),
                    Number(LifeTables.Rate(family, k, family.LaunchMonth, 10)));
            }
        }
    }

    private static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
