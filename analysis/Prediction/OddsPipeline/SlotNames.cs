using Microsoft.ML;
using Microsoft.ML.Transforms;

namespace PartsSignal.Analysis.Prediction.OddsPipeline;

/// <summary>
/// Gives the odds the names of their needs. A custom mapping read from a file cannot name the slots of a vector, but the
/// library names the slots of a concatenation after its columns: so the odds are dealt out to columns named after the needs,
/// sixteen at a time.
/// </summary>
internal static class SlotNames
{
    private const int AtOnce = 16;

    /// <summary>The transforms from <see cref="BareOddsRow.OddsLeft"/> to one named vector.</summary>
    public static IEstimator<ITransformer> Naming(MLContext context, IReadOnlyList<string> needs)
    {
        IEstimator<ITransformer>? naming = null;
        for (int from = 0; from < needs.Count; from += AtOnce)
        {
            IEstimator<ITransformer> dealt = context.Transforms.CustomMapping(new SlotsMapping().GetMapping(), Contracts.Slots);
            naming = naming is null ? dealt : naming.Append(dealt);
            for (int slot = 0; slot < AtOnce && from + slot < needs.Count; slot++)
            {
                naming = naming.Append(context.Transforms.CopyColumns(needs[from + slot], $"Slot{slot}"));
            }
        }

        return naming!.Append(context.Transforms.Concatenate(CallOdds.ScoreColumn, [.. needs]));
    }

    /// <summary>Columns that only serve the naming.</summary>
    public static IEnumerable<string> Helpers => [nameof(OddsLeftRow.OddsLeft), .. Enumerable.Range(0, AtOnce).Select(i => $"Slot{i}")];
}

/// <summary>Odds that have no column yet.</summary>
internal sealed class OddsLeftRow
{
    public float[] OddsLeft { get; set; } = [];
}

/// <summary>The next sixteen odds, and those still left.</summary>
internal sealed class SlotsRow
{
    public float[] OddsLeft { get; set; } = [];

    public float Slot0 { get; set; }

    public float Slot1 { get; set; }

    public float Slot2 { get; set; }

    public float Slot3 { get; set; }

    public float Slot4 { get; set; }

    public float Slot5 { get; set; }

    public float Slot6 { get; set; }

    public float Slot7 { get; set; }

    public float Slot8 { get; set; }

    public float Slot9 { get; set; }

    public float Slot10 { get; set; }

    public float Slot11 { get; set; }

    public float Slot12 { get; set; }

    public float Slot13 { get; set; }

    public float Slot14 { get; set; }

    public float Slot15 { get; set; }
}

/// <summary>Deals out the next sixteen odds.</summary>
[CustomMappingFactoryAttribute(Contracts.Slots)]
internal sealed class SlotsMapping : CustomMappingFactory<OddsLeftRow, SlotsRow>
{
    public override Action<OddsLeftRow, SlotsRow> GetMapping() => static (from, to) =>
    {
        float[] left = from.OddsLeft;
        to.Slot0 = At(left, 0);
        to.Slot1 = At(left, 1);
        to.Slot2 = At(left, 2);
        to.Slot3 = At(left, 3);
        to.Slot4 = At(left, 4);
        to.Slot5 = At(left, 5);
        to.Slot6 = At(left, 6);
        to.Slot7 = At(left, 7);
        to.Slot8 = At(left, 8);
        to.Slot9 = At(left, 9);
        to.Slot10 = At(left, 10);
        to.Slot11 = At(left, 11);
        to.Slot12 = At(left, 12);
        to.Slot13 = At(left, 13);
        to.Slot14 = At(left, 14);
        to.Slot15 = At(left, 15);
        to.OddsLeft = left.Length > 16 ? left[16..] : [];
    };

    private static float At(float[] left, int slot) => slot < left.Length ? left[slot] : 0;
}
