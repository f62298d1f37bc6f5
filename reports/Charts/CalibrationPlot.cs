using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>Answers of about the same stated odds.</summary>
/// <param name="Stated">Mean of the odds stated, 0 to 1.</param>
/// <param name="CameTrue">Share that came true, with its interval.</param>
/// <param name="Answers">How many answers.</param>
internal sealed record CalibrationBin(double Stated, Estimate CameTrue, long Answers);

/// <summary>Stated odds against what came true: on the diagonal the odds can be taken at face value.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Bins">Groups of answers, lowest odds first.</param>
internal sealed record CalibrationPlot(ChartText Text, IReadOnlyList<CalibrationBin> Bins) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency = "")
    {
        Scale x = Scale.Between(0, 100, "odds stated, %", Format.Tick);
        Scale y = Scale.Between(0, 100, "came true, %", Format.Tick);
        IReadOnlyList<LegendEntry> legend = [new("came true, 95 % interval", Palette.Main, MarkShape.Dot, Stroke.Solid), new("perfect agreement", Palette.Quiet, null, Stroke.Dashed)];
        int head = Legend.Height(legend, 440);
        var canvas = new ChartCanvas(new ChartFrame(290 + head, Top: 10 + head), x, y);
        canvas.Line(0, 0, 100, 100, Palette.Quiet, 1.5f, Stroke.Dashed);
        foreach (CalibrationBin bin in Bins)
        {
            if (bin.CameTrue.Value is not { } share)
            {
                continue;
            }

            double at = bin.Stated * 100;
            canvas.Line(at, (bin.CameTrue.Lower ?? share) * 100, at, (bin.CameTrue.Upper ?? share) * 100, Palette.Main, 2);
            canvas.Mark(at, share * 100, MarkShape.Dot, Palette.Main, 8);
        }

        Legend.Draw(canvas, legend);
        return ChartSvg.Figure(canvas, Text);
    }
}
