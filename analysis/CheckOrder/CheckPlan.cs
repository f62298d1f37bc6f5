namespace PartsSignal.Analysis.CheckOrder;

/// <summary>An order of checks.</summary>
/// <param name="Order">Places in the list of suspects, first check first.</param>
/// <param name="ExpectedMinutes">Expected minutes until the fault is found or all checks are done.</param>
/// <param name="Exact">True: no order is quicker; false: found by a rule.</param>
internal sealed record CheckPlan(IReadOnlyList<int> Order, double ExpectedMinutes, bool Exact);
