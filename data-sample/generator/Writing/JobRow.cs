using System.Globalization;
using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.Simulation;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Writing;

/// <summary>A part line as written.</summary>
internal sealed record PartCell(string Number, string Description, int Quantity, decimal Price, bool FromVan);

/// <summary>A job as the log shows it on a day, still without a layout.</summary>
internal sealed record JobRow(
    Job Job, string Van, int Day, JobState State, int? ClosedDay, int ChangedDay, IReadOnlyList<PartCell> Parts)
{
    /// <summary>The row of a job as it stood at the end of a day; the same job gives the same typing on any day.</summary>
    public static JobRow On(Job job, string van, int day, long seed)
    {
        JobState state = job.StateOn(day);
        bool done = state == JobState.FixedWithPart;
        Dice dice = Dice.For(seed, "parts typed", job.Number);
        PartCell[] parts = [.. job.Parts.Select(p => new PartCell(
            PartTyping.Number(p, job.OpenedDay, dice),
            dice.Chance(0.85) ? p.Part.Description : "",
            p.Quantity,
            Math.Round(p.Part.PriceOn(job.OpenedDay, false) * 1.35m, 2, MidpointRounding.AwayFromZero),
            p.FromVan))];
        return new JobRow(
            job, van, day, state, job.ClosedDay <= day ? job.ClosedDay : null, job.ChangedDay(day), done ? parts : []);
    }

    public bool IsSeen => State != JobState.Waiting;

    public string Technician => IsSeen ? Job.Technician : "";

    public string Visits => State == JobState.Waiting ? "" : Text(ClosedDay is null ? 1 : Job.Visits);

    public string Labour => ClosedDay is null ? "" : Text(Job.LabourMinutes);

    public string StatedAge => Job.Note.StatedAge is { } age ? Text(age) : "";

    public static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    public static string DayText(int? day, string format) =>
        day is { } known ? ShopCalendar.Date(known).ToString(format, CultureInfo.InvariantCulture) : "";

    public static string Money(decimal amount, bool comma)
    {
        string text = amount.ToString("0.00", CultureInfo.InvariantCulture);
        return comma ? text.Replace('.', ',') : text;
    }
}

/// <summary>How a technician writes the number of a fitted part: as on the label, the old one by habit, the supplier's own, a dash lost.</summary>
internal static class PartTyping
{
    public static string Number(FittedPart fitted, int day, Dice dice)
    {
        PartVersion version = fitted.Part.Versions[fitted.Version];
        double ownNumber = fitted.Part.Component == Faults.PumpComponent ? (fitted.SecondSupplier ? 0.75 : 0.35) : 0.05;
        if (dice.Chance(ownNumber))
        {
            return fitted.SecondSupplier ? version.OwnNumberSecond : version.OwnNumberFirst;
        }

        if (fitted.Version > 0 && day - version.EffectiveDay < 400 && dice.Chance(0.3))
        {
            version = fitted.Part.Versions[fitted.Version - 1];
        }

        return dice.Below(24) switch
        {
            0 => version.Number.Replace("-", "", StringComparison.Ordinal),
            1 => version.Number.ToLowerInvariant(),
            2 => version.Number.Replace("-", " ", StringComparison.Ordinal),
            3 when version.Number.Any(char.IsAsciiLetter) && version.Number.Length > 5 => version.Number.Replace('0', 'O'),
            _ => version.Number,
        };
    }
}
