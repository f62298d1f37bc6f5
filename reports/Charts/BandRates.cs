using PartsSignal.Analysis.Statistics;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Charts;

/// <summary>One band of a plot of rates.</summary>
/// <param name="Band">Its name, for example <c>2-4</c>.</param>
/// <param name="Rate">The rate with its interval, or why there is none.</param>
/// <param name="Events">Events counted.</param>
/// <param name="Exposure">What they are divided by; 0: not known.</param>
internal sealed record BandRate(string Band, Estimate Rate, long Events, double Exposure = 0);

/// <summary>Rates by age band, each with its interval and its count.</summary>
/// <param name="Text">Its words.</param>
/// <param name="BandTitle">What the bands are, with the unit.</param>
/// <param name="RateTitle">What the rate is, with the unit.</param>
/// <param name="Bands">The bands, youngest first.</param>
internal sealed record BandRates(ChartText Text, string BandTitle, string RateTitle, IReadOnlyList<BandRate> Bands) : IBlock
{
    /// <inheritdoc/>
    public Node Draw(string currency = "")
    {
        double top = Bands.Select(b => b.Rate.Upper ?? b.Rate.Value ?? 0).DefaultIfEmpty(0).Max();
        Scale y = Scale.FromZero(top, RateTitle, Format.Tick);
        Scale x = Scale.Places([.. Bands.Select(b => b.Band)], BandTitle);
        var canvas = new ChartCanvas(new ChartFrame(250, Top: 30), x, y);
        canvas.LabelAt(52, 14, "dot: rate; line: 95 % interval; number: events counted", TextAnchor.Start, Palette.Quiet);
        for (int i = 0; i < Bands.Count; i++)
        {
            Estimate rate = Bands[i].Rate;
            if (rate.Value is not { } value)
            {
                canvas.Label(i, y.Min, "none", TextAnchor.Middle, 0, -8, Palette.Quiet);
                continue;
            }

            double upper = rate.Upper ?? value;
            canvas.Line(i, rate.Lower ?? value, i, upper, Palette.Main, 2);
            canvas.Mark(i, value, MarkShape.Dot, Palette.Main, 9);
            canvas.Label(i, upper, Format.Count(Bands[i].Events), TextAnchor.Middle, 0, -5, Palette.Quiet);
        }

        return ChartSvg.Figure(canvas, Text);
    }
}
