namespace PartsSignal.Analysis.CrossReference;

/// <summary>How one number stands in for another.</summary>
public enum SupersessionKind
{
    /// <summary>One for one.</summary>
    Replaces,

    /// <summary>One of several that are all needed.</summary>
    KitPart,

    /// <summary>Any one of several will do.</summary>
    Alternative,
}

/// <summary>An arrow old -> new of a supersession list.</summary>
/// <param name="Old">The number that goes.</param>
/// <param name="New">The number that comes.</param>
/// <param name="Kind">How it stands in.</param>
/// <param name="Quantity">New pieces per old piece, 1 or more.</param>
/// <param name="EffectiveOn">From when; null: since ever.</param>
internal sealed record SupersessionArrow(string Old, string New, SupersessionKind Kind = SupersessionKind.Replaces, int Quantity = 1, DateOnly? EffectiveOn = null);
