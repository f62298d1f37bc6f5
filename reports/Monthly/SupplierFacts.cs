using PartsSignal.Analysis.Statistics;

namespace PartsSignal.Reports.Monthly;

/// <summary>How suppliers' parts hold up, and how long they take.</summary>
/// <param name="Quality">By supplier and component, worst first.</param>
/// <param name="LeadTimes">By supplier.</param>
/// <param name="WatchDays">Days within which a part that fails again counts as an early failure.</param>
public sealed record SupplierFacts(IReadOnlyList<SupplierQuality> Quality, IReadOnlyList<SupplierLeadTime> LeadTimes, int WatchDays);

/// <summary>Parts of one component from one supplier.</summary>
/// <param name="Supplier">The supplier.</param>
/// <param name="Component">The component.</param>
/// <param name="Fitted">Parts fitted and watched.</param>
/// <param name="FailedEarly">Those replaced again within the window on the same unit.</param>
/// <param name="Share">Their share.</param>
/// <param name="Others">The same share for all other suppliers; null: there is no other.</param>
/// <param name="StandsOut">True: worse than the others beyond chance.</param>
public sealed record SupplierQuality(string Supplier, string Component, long Fitted, long FailedEarly, Estimate Share, double? Others, bool StandsOut);

/// <summary>How long orders took.</summary>
/// <param name="Supplier">The supplier.</param>
/// <param name="Lines">Order lines received.</param>
/// <param name="Waiting">Order lines not received yet.</param>
/// <param name="MedianDays">Half were received within so many days; null: too few.</param>
/// <param name="NinetyDays">Nine in ten were received within so many days; null: too few.</param>
/// <param name="Returned">Share of lines sent back.</param>
public sealed record SupplierLeadTime(string Supplier, long Lines, long Waiting, double? MedianDays, double? NinetyDays, Estimate Returned);
