using PartsSignal.Analysis.PartPrediction.Answers;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Checks;
using PartsSignal.Pipeline.Commands;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Reads what answers need from the last run.</summary>
public static class LookupStore
{
    private const string Risks = "next_year_risk";

    /// <summary>The facts of the last run.</summary>
    /// <param name="output">Folder of the run.</param>
    /// <param name="input">Folder with the shop's files, for its own checks.</param>
    /// <exception cref="BadInputException">There is no store, or the checks have faults.</exception>
    public static LookupFacts Read(OutputFolder output, string? input)
    {
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"{output.Store}: there is no store yet. Run 'partssignal run' first, or name its folder with --out.");
        }

        using Database database = CurrentStore.Open(output);
        return FactReader.Read(database, CheckTableReader.Load(input), YearRisks(database, output));
    }

    /// <summary>What the store knows of the appliance with a serial; null: nothing.</summary>
    /// <param name="output">Folder of the run; its key turns the serial into the identifier the store goes by.</param>
    /// <param name="serial">Serial as on the label.</param>
    /// <param name="brands">Brands it may be of; a null among them: rows that name no brand.</param>
    /// <param name="on">Day of the call.</param>
    public static UnitHistory? History(OutputFolder output, string serial, IEnumerable<string?> brands, DateOnly on)
    {
        if (!File.Exists(output.Key))
        {
            return null;
        }

        var key = IdentityKey.LoadOrMake(output.Key);
        string[] units = [.. brands.Select(b => SerialKey.Of(key, b, serial)).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (units.Length == 0)
        {
            return null;
        }

        using Database database = CurrentStore.Open(output);
        return UnitHistory.Read(database, units, on);
    }

    private static IReadOnlyList<YearRisk> YearRisks(Database database, OutputFolder output)
    {
        string path = Path.Combine(output.Results, Risks + ".parquet");
        if (!File.Exists(path))
        {
            return [];
        }

        database.Execute($"create or replace view {Database.Quote(Risks)} as from read_parquet({Database.Literal(path)})");
        return database.Read("Prediction/year_risks.sql", r => new YearRisk(
            r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3), r.Int(4), r.GetDouble(5), r.Long(6) ?? 0));
    }
}
