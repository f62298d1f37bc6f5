using PartsSignal.Analysis.Sql;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads what a monthly report tells from the result tables of a session; a table that is not there leaves its section saying so.</summary>
public static class MonthlyReader
{
    /// <summary>Reads the facts of one month.</summary>
    public static MonthlyFacts Read(Database database, MonthlyOptions query)
    {
        RisingFacts? rising = RisingReader.Read(database, query);
        ReturnFacts? returns = ReturnReader.Read(database, query);
        DataQualityFacts mending = DataQualityReader.Read(database);
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
            DataQuality = mending,
        };
    }
}
