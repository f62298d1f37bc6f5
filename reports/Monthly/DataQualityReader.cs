using PartsSignal.Analysis.Sql;
using PartsSignal.Reports.Components;

namespace PartsSignal.Reports.Monthly;

/// <summary>Reads the books, the rejects and what is missing on jobs.</summary>
internal static class DataQualityReader
{
    public static DataQualityFacts Read(Database database) => new(
        database.Read("queries/report/files.sql", r => new FileBooks(r.GetString(0), r.GetString(1), r.GetInt64(2), r.GetInt64(3), r.GetInt64(4), r.GetInt64(5), r.GetInt64(6))),
        database.Read("queries/report/reject_reasons.sql", r => new RejectReason(r.GetString(0), r.Text(1), r.GetInt64(2), $"{r.GetString(3)}, line {Format.Count(r.GetInt32(4))}", r.GetString(5))),
        database.Read("queries/report/fault_kinds.sql", r => new FaultKind(r.GetString(0), r.GetInt64(1), r.GetString(2))),
        database.Read("queries/report/gaps.sql", r => Describe(r.GetString(0), r.GetInt64(1), r.GetInt64(2))));

    private static Gap Describe(string gap, long missing, long of)
    {
        (string what, string costs) = gap switch
        {
            "unit" => ("a unit that can be followed", "Its returns and repeat failures cannot be seen. Write down the serial number, or customer and model."),
            "family" => ("a known model family", "It is answered from the type of appliance. Add the model to the model list, or correct the model number."),
            "age" => ("the age of the appliance", "It counts for no age curve or age band. Write down the serial number or the year bought."),
            "complaint_missing" => ("a complaint", "Nothing can be predicted from it. Type what the customer said."),
            "complaint_other" => ("a complaint in the table of words", "It is lumped with all other odd complaints. Add the customer's words to the table of complaint words."),
            "cause" => ("a known cause on a closed job", "Nothing can be learned from it. Write down the part fitted, or that none was needed."),
            "visits" => ("the number of visits on a closed job", "It cannot count for or against the first visit. Write down the visits, or the day of each."),
            "van" => ("the van", "It counts for no van's plan. Write down the van or the technician."),
            "part" => ("a part number that is known", "Its part counts for no van plan. See the review list for likely numbers."),
            _ => (Format.Words(gap), ""),
        };
        return new Gap(what, missing, of, costs);
    }
}
