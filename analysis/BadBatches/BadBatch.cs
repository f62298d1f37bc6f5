namespace PartsSignal.Analysis.BadBatches;

/// <summary>
/// Units of one family and some build months that needed one component more often than the family's other units at the
/// same ages. Calls are counted, not units: how often units of these months call at all is not known.
/// </summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">The family.</param>
/// <param name="Component">What fails.</param>
/// <param name="BuiltFrom">First day of the first build month.</param>
/// <param name="BuiltTo">First day of the last build month.</param>
/// <param name="UnderYears">Only calls under this age were compared; null: calls of any age.</param>
/// <param name="Cases">Calls about these units that needed the component, one for each unit.</param>
/// <param name="Calls">Calls about these units whose cause is known.</param>
/// <param name="OtherCases">The same of the family's other units.</param>
/// <param name="OtherCalls">The same of the family's other units.</param>
/// <param name="Expected">Cases there would be if these units were like the family's others of the same age.</param>
/// <param name="P">Chance of such a span of build months if all are alike, the spans tried allowed for.</param>
/// <param name="Q">The same held against every family and component scanned (Benjamini and Hochberg 1995).</param>
/// <param name="SpansTried">Spans of build months tried.</param>
/// <param name="BuiltLaterCalls">Calls about units built after these months; few: it cannot be told yet whether it has ended.</param>
/// <param name="LargestCustomerCases">Cases of the customer with most of them; 0: no customer is known.</param>
/// <param name="SurvivesCustomer">Still unlikely (5 %) without that customer's calls.</param>
/// <param name="UnitsOut">Units of these build months known to be out there that have not needed it yet; null: no unit is known.</param>
/// <param name="UnitsListed">Those of them that a register lists; the rest are known from their jobs.</param>
public sealed record BadBatch(
    string ApplianceType,
    string ModelFamily,
    string Component,
    DateOnly BuiltFrom,
    DateOnly BuiltTo,
    int? UnderYears,
    long Cases,
    long Calls,
    long OtherCases,
    long OtherCalls,
    double Expected,
    double P,
    double Q,
    int SpansTried,
    long BuiltLaterCalls,
    long LargestCustomerCases,
    bool SurvivesCustomer,
    long? UnitsOut,
    long? UnitsListed);

/// <summary>A job behind a bad batch.</summary>
public sealed record BadBatchJob(string ApplianceType, string ModelFamily, string Component, string JobId);

/// <summary>A family and component in which bad batches were looked for.</summary>
/// <param name="ApplianceType">For example washer.</param>
/// <param name="ModelFamily">The family.</param>
/// <param name="Component">The component.</param>
/// <param name="Cases">Cases whose build month is known, one for each unit.</param>
/// <param name="Calls">Calls whose cause and build month are known.</param>
/// <param name="SpansTried">Spans of build months that could have convinced; 0: too few cases to tell anything.</param>
/// <param name="P">Chance of the strangest one, the spans tried allowed for; null: nothing tried.</param>
/// <param name="Q">The same held against every family and component scanned; null: nothing tried.</param>
/// <param name="Found">True where a bad batch is named.</param>
public sealed record BatchTest(
    string ApplianceType, string ModelFamily, string Component, long Cases, long Calls, int SpansTried, double? P, double? Q, bool Found);
