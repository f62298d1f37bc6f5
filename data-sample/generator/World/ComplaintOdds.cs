namespace PartsSignal.SampleShop.World;

/// <summary>How a cause shows and what the display says: the odds the calls are drawn from and the truth is computed with.</summary>
internal static class ComplaintOdds
{
    public const string ErrorCodeKind = "error_code";

    /// <summary>Typed so vaguely that it tells nothing.</summary>
    public const string VagueKind = "other";

    /// <summary>Nothing typed at all.</summary>
    public const string NoKind = "none";

    public const double VagueShare = 0.045;
    public const double EmptyShare = 0.015;
    public const int CodeGroups = 7;

    private const double CodeRightShare = 0.82;

    /// <summary>Share of a cause's failures that show as a complaint kind; a mechanical timer has no display, so its error codes show as 'stops'.</summary>
    public static double Of(ModelFamily family, Cause cause, string kind)
    {
        double share = 0;
        foreach ((string name, double odds) in cause.Odds)
        {
            if (Shown(family, name) == kind)
            {
                share += odds;
            }
        }

        return share;
    }

    /// <summary>What a complaint kind becomes on a family without a display.</summary>
    public static string Shown(ModelFamily family, string kind) =>
        kind == ErrorCodeKind && family.Generation == "mech" ? "stops" : kind;

    /// <summary>Chance that the caller reads a code from the display.</summary>
    public static double CodeGiven(ModelFamily family, Cause cause, string kind)
    {
        if (family.Generation == "mech" || kind is VagueKind or NoKind)
        {
            return 0;
        }

        return kind == ErrorCodeKind ? 0.92 : cause.CodeGroup > 0 ? 0.24 : 0.06;
    }

    /// <summary>Chance of one group's code, when a code is given: its own most of the time, else any of the others, as misread.</summary>
    public static double CodeIs(Cause cause, int group)
    {
        if (cause.CodeGroup == 0)
        {
            return 1.0 / CodeGroups;
        }

        return group == cause.CodeGroup ? CodeRightShare : (1 - CodeRightShare) / (CodeGroups - 1);
    }

    /// <summary>Chance of a complaint as typed, given the cause.</summary>
    /// <param name="family">The family.</param>
    /// <param name="cause">The cause.</param>
    /// <param name="kind">Complaint kind, or one of <see cref="VagueKind"/> and <see cref="NoKind"/>, which tell nothing.</param>
    /// <param name="codeGroup">Group of the error code; 0: none given.</param>
    public static double Likelihood(ModelFamily family, Cause cause, string kind, int codeGroup)
    {
        if (kind is VagueKind or NoKind)
        {
            return 1;
        }

        double code = CodeGiven(family, cause, kind);
        return Of(family, cause, kind) * (codeGroup == 0 ? 1 - code : code * CodeIs(cause, codeGroup));
    }
}
