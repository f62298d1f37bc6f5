namespace PartsSignal.Analysis.Vocabulary;

/// <summary>Words about safety.</summary>
public static class Safety
{
    /// <summary>What goes with every list of likely parts, odds or checks, on a screen and on paper: they are read at open machines.</summary>
    public const string Caution =
        "Before any cabinet is opened: disconnect power and water, and prove it dead. Capacitors and microwave high-voltage parts hold a charge. "
        + "Gas and sealed-system work only by those licensed for it. The maker's service sheet and local codes come before anything printed here.";
}
