namespace PartsSignal.Analysis.AgeCurves;

/// <summary>
/// Climbs to the maximum of a Weibull log likelihood: Newton steps on the logs of shape and scale, damped towards the
/// gradient where the surface is not concave (Marquardt 1963), halved until they climb.
/// </summary>
internal static class WeibullMaximum
{
    private const int MostSteps = 200;
    private const double Farthest = 12;

    /// <summary>The top, or null when the likelihood climbs without end or does not settle.</summary>
    public static Peak? Find(WeibullTerms terms, double logShape, double logScale, bool shapeFixed = false, bool scaleFixed = false)
    {
        Expansion here = terms.At(logShape, logScale);
        for (int step = 0; step < MostSteps; step++)
        {
            (double a, double b) = Direction(here, shapeFixed, scaleFixed);
            double length = Math.Max(Math.Abs(a), Math.Abs(b));
            double factor = Math.Min(1, 1 / length);
            Expansion next = terms.At(logShape + factor * a, logScale + factor * b);
            while (!(next.Value >= here.Value) && factor * length > 1e-13)
            {
                factor /= 2;
                next = terms.At(logShape + factor * a, logScale + factor * b);
            }

            bool climbed = next.Value >= here.Value;
            if (climbed)
            {
                (logShape, logScale, here) = (logShape + factor * a, logScale + factor * b, next);
            }

            if (Math.Abs(logShape) > Farthest || Math.Abs(logScale) > Farthest)
            {
                return null;
            }

            if (length < 1e-11 || !climbed || factor * length < 1e-13)
            {
                return new Peak(logShape, logScale, here);
            }
        }

        return null;
    }

    private static (double Shape, double Scale) Direction(Expansion at, bool shapeFixed, bool scaleFixed)
    {
        if (shapeFixed || scaleFixed)
        {
            double gradient = shapeFixed ? at.ByScale : at.ByShape;
            double curvature = shapeFixed ? at.ByScaleScale : at.ByShapeShape;
            double along = curvature < 0 ? -gradient / curvature : Math.Sign(gradient) * 0.5;
            return shapeFixed ? (0, along) : (along, 0);
        }

        double size = Math.Abs(at.ByShapeShape) + Math.Abs(at.ByScaleScale) + Math.Abs(at.ByShapeScale);
        for (double damping = 0; ; damping = damping == 0 ? size * 1e-3 : damping * 4)
        {
            double aa = damping - at.ByShapeShape;
            double bb = damping - at.ByScaleScale;
            double determinant = aa * bb - at.ByShapeScale * at.ByShapeScale;
            if (aa > 0 && determinant > 0)
            {
                return ((bb * at.ByShape + at.ByShapeScale * at.ByScale) / determinant, (aa * at.ByScale + at.ByShapeScale * at.ByShape) / determinant);
            }

            if (damping > size * 1e12 || !double.IsFinite(size) || size == 0)
            {
                return (Math.Sign(at.ByShape) * 0.1, Math.Sign(at.ByScale) * 0.1);
            }
        }
    }
}

/// <summary>Where the likelihood is highest.</summary>
internal sealed record Peak(double LogShape, double LogScale, Expansion At);
