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
