using PartsSignal.SampleShop.Chance;
using PartsSignal.SampleShop.World;

namespace PartsSignal.SampleShop.Simulation;

/// <summary>What happens at a visit: the diagnosis, the customer's decision, the parts.</summary>
internal sealed class Workshop(IReadOnlyList<VanStock> vans, OrderDesk orders, IReadOnlyList<Technician> crew, Dice dice)
{
    /// <summary>First visit. Sets the job's outcome, or its parts on order and the day of the second visit.</summary>
    public void Visit(Job job, int day)
    {
        Technician technician = Technician.On(crew, job.Van, day, dice);
        job.Technician = technician.Name;
        job.Visits = 1;
        job.LabourMinutes = dice.Between(3, 8) * 5;
        job.Diagnosis = Diagnose(job, technician);
        FamilyCause found = job.Unit.Family.Causes[job.Diagnosis.Value];
        if (found.Part is null)
        {
            bool nothing = found.Cause.Name is "user_setting" or "tripped_breaker" && dice.Chance(0.4);
            Close(job, day, nothing ? JobState.NoFaultFound : JobState.FixedWithoutPart);
            return;
        }

        decimal price = found.Part.PriceOn(day, false);
        if (day >= found.Part.EndDay || dice.Chance(Wear.NotWorth(job.Unit.AgeOn(day), price, job.Unit.Owner.IsContract)))
        {
            Close(job, day, JobState.NotWorthRepairing);
            return;
        }

        if (dice.Chance(Wear.Declines(price, job.Unit.Owner.IsContract)))
        {
            Close(job, day, JobState.Declined);
            return;
        }

        FindParts(job, found, day);
    }

    /// <summary>The parts needed for a diagnosis, with pieces of each.</summary>
    public static List<(PartLineage Part, int Quantity)> Needed(FamilyCause cause, int day, Dice dice)
    {
        var needed = new List<(PartLineage, int)>();
        if (cause.Part is null)
        {
            return needed;
        }

        needed.Add((cause.Part, 1));
        if (day >= cause.Part.KitDay && cause.Part.KitPart is not null)
        {
            needed.Add((cause.Part.KitPart, 1));
        }

        foreach ((PartLineage part, double share) in cause.Extras)
        {
            if (dice.Chance(share) && part != cause.Part.KitPart)
            {
                needed.Add((part, part.Component == "thermistor" || part.Component == "fill_hose" ? 1 : dice.Chance(0.12) ? 2 : 1));
            }
        }

        return needed;
    }

    private int Diagnose(Job job, Technician technician)
    {
        ModelFamily family = job.Unit.Family;
        Cause truth = family.Causes[job.TrueCause].Cause;
        if (job.IsCallback || !dice.Chance(technician.MissChance(truth)))
        {
            return job.TrueCause;
        }

        double[] mistaken = Mistaken.Weights(family, job.TrueCause, job.ShownKind);
        return mistaken.Sum() > 0 ? dice.Weighted(mistaken) : job.TrueCause;
    }

    private void FindParts(Job job, FamilyCause found, int day)
    {
        VanStock van = vans[job.Van];
        int ready = day;
        foreach ((PartLineage part, int quantity) in Needed(found, day, dice))
        {
            van.NoteNeed(part);
            for (int i = 0; i < quantity; i++)
            {
                if (van.Take(part) is { } piece)
                {
                    Add(job, part, piece.Version, piece.Second, true);
                    continue;
                }

                OrderLine line = orders.ForJob(part, 1, job.Id, day);
                ready = Math.Max(ready, line.ArrivesDay);
                Add(job, part, line.Version, line.Second, false);
            }
        }

        job.LabourMinutes += dice.Between(2, 14) * 5;
        if (ready == day && !dice.Chance(0.025))
        {
            Close(job, day, JobState.FixedWithPart);
            return;
        }

        job.Visits = 2;
        job.LabourMinutes += 20;
        bool cancelled = dice.Chance(0.02);
        job.ClosedDay = ShopCalendar.NextWorkday(ready + dice.Between(1, 6));
        job.State = cancelled ? JobState.Declined : JobState.FixedWithPart;
        if (cancelled)
        {
            job.Parts.Clear();
        }
    }

    private static void Add(Job job, PartLineage part, int version, bool second, bool fromVan)
    {
        int at = job.Parts.FindIndex(p => p.Part == part && p.Version == version && p.FromVan == fromVan && p.SecondSupplier == second);
        if (at >= 0)
        {
            job.Parts[at] = job.Parts[at] with { Quantity = job.Parts[at].Quantity + 1 };
            return;
        }

        job.Parts.Add(new FittedPart(part, version, 1, fromVan, second));
    }

    private static void Close(Job job, int day, JobState state)
    {
        job.ClosedDay = day;
        job.State = state;
    }
}
