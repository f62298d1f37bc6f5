using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Monthly.Ages;
using PartsSignal.Reports.Monthly.Failures;
using PartsSignal.Reports.Monthly.Mending;
using PartsSignal.Reports.Monthly.Opening;
using PartsSignal.Reports.Monthly.Predictor;
using PartsSignal.Reports.Monthly.Returns;
using PartsSignal.Reports.Monthly.Rising;
using PartsSignal.Reports.Monthly.Suppliers;
using PartsSignal.Reports.Monthly.Vans;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads what a monthly report tells from the result tables of a session; a table that is not there leaves its section saying so.</summary>
public static class MonthlyReader
{
    /// <summary>Reads the facts of one month.</summary>
    public static MonthlyFacts Read(Database database, MonthlyQuery query)
    {
        RisingFacts? rising = RisingReader.Read(database, query);
        ReturnFacts? returns = ReturnReader.Read(database, query);
        MendingFacts mending = MendingReader.Read(database);
        return new MonthlyFacts
        {
            Shop = query.Shop,
            Currency = query.Currency,
            Opening = OpeningReader.Read(database, query, rising, returns, mending),
            Rising = rising,
            Failures = FailureReader.Read(database, query),
            Ages = AgeReader.Read(database),
            Returns = returns,
            Suppliers = SupplierReader.Read(database),
            Vans = VanReader.Read(database, query.Currency),
            Predictor = PredictorReader.Read(database, query),
            Mending = mending,
        };
    }
}
