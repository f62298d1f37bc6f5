using PartsSignal.Analysis.Statistics.Distributions;

namespace PartsSignal.Analysis.VanPlan;

/// <summary>A part a van should carry.</summary>
/// <param name="Van">The van.</param>
/// <param name="PartNumber">Current number.</param>
/// <param name="Description">Text, or null if there is none.</param>
/// <param name="Component">What it is, or null if not known.</param>
/// <param name="Supplier">Null: not known.</param>
/// <param name="Minimum">Restock without delay at this number or below.</param>
/// <param name="Target">Pieces after restocking.</param>
/// <param name="Price">Price of a piece.</param>
/// <param name="PriceKnown">False: the price is the median of its component.</param>
/// <param name="Money">Price of the target.</param>
/// <param name="Space">Space units of the target.</param>
/// <param name="PiecesPerYear">Expected use by this van.</param>
/// <param name="JobsPerYear">Jobs a year that could not be finished at the first visit without the part, the rest of the load as planned.</param>
public sealed record PlanRow(
    string Van, string PartNumber, string? Description, string? Component, string? Supplier, int Minimum, int Target, decimal Price,
    bool PriceKnown, decimal Money, double Space, double PiecesPerYear, double JobsPerYear)
{
    /// <summary>The plan of one van, by part number.</summary>
    public static IReadOnlyList<PlanRow> From(PlannedVan planned, VanPlanOptions options, double serviceTarget)
    {
        double[] perDay = planned.Demand.PiecesPerDay();
        int[] load = [.. planned.Target];
        double worth = planned.Usual.Worth(load);
        var rows = new List<PlanRow>();
        for (int p = 0; p < load.Length; p++)
        {
            if (load[p] == 0)
            {
                continue;
            }

            StockPart part = planned.View.Parts[p];
            int target = load[p];
            load[p] = 0;
            double jobs = (worth - planned.Usual.Worth(load)) / planned.WorthPerJob;
            load[p] = target;
            rows.Add(new PlanRow(
                planned.Van.Van, part.Number, part.Description, part.Component, part.Supplier,
                UntilDelivery(perDay[p] * (options.ReviewDays + part.LeadDays), planned.Demand.Evidence[p], target, serviceTarget), target,
                part.Price, part.PriceKnown, target * part.Price, target * part.Space, perDay[p] * 365.25, jobs));
        }

        return rows;
    }

    /// <summary>What the van needs until the next delivery with the wanted chance; from 1 to the target.</summary>
    private static int UntilDelivery(double pieces, double evidence, int target, double serviceTarget)
    {
        long needed = pieces > 0 ? NegativeBinomialDistribution.FromMean(pieces, 0.5 + evidence).Quantile(Math.Clamp(serviceTarget, 0, 0.999)) : 0;
        return (int)Math.Clamp(needed, 1, target);
    }
}
