using PartsSignal.SampleShop.Chance;

namespace PartsSignal.SampleShop.Writing;

/// <summary>
/// The first software let the office type anything into any field. Once in a few hundred jobs a date is no date or the
/// job number is missing, and nobody can read the row.
/// </summary>
internal static class Slip
{
    /// <summary>The cells as typed that day.</summary>
    public static void MayTouch(string[] cells, LogLayout layout, int jobNumber, long seed)
    {
        if (layout.Words != LogWords.Old)
        {
            return;
        }

        Dice dice = Dice.For(seed, "slip", jobNumber);
        double luck = dice.Uniform();
        if (luck < 0.0012)
        {
            cells[Index(layout, "opened_on")] = $"{cells[Index(layout, "opened_on")][..2]}/13{cells[Index(layout, "opened_on")][5..]}";
        }
        else if (luck < 0.0020)
        {
            cells[Index(layout, "job_id")] = "";
        }
        else if (luck < 0.0035)
        {
            cells[Index(layout, "closed_on")] = "tba";
        }
    }

    private static int Index(LogLayout layout, string field)
    {
        for (int i = 0; i < layout.Columns.Count; i++)
        {
            if (layout.Columns[i].Field == field)
            {
                return i;
            }
        }

        throw new ArgumentException($"the layout has no {field}", nameof(field));
    }
}
