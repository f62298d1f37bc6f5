using PartsSignal.Reports.Charts;

namespace PartsSignal.Reports.Monthly;

/// <summary>Age curves that can be drawn honestly, and why the others cannot.</summary>
/// <param name="Groups">Curves by component, those with most events first.</param>
/// <param name="NotDrawn">Components without a curve, with the reason.</param>
public sealed record AgeFacts(IReadOnlyList<AgeGroup> Groups, IReadOnlyList<AgeRefusal> NotDrawn);

/// <summary>The curves of one component.</summary>
/// <param name="Name">What fails.</param>
/// <param name="Method">In words: how the curve was estimated and what it leaves out.</param>
/// <param name="Basis">Whose ages, how many units and failures.</param>
/// <param name="Conclusion">What to conclude.</param>
/// <param name="YTitle">What the height shows, with its unit.</param>
/// <param name="Curves">The curves, heights in per cent.</param>
public sealed record AgeGroup(string Name, string Method, string Basis, string Conclusion, string YTitle, IReadOnlyList<Curve> Curves);

/// <summary>A component without a curve.</summary>
public sealed record AgeRefusal(string Name, long Events, string Reason);
