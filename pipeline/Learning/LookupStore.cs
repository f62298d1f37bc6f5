using System.Runtime.CompilerServices;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Reads the facts that answers need from the last run.</summary>
internal static class LookupStore
{
    private const string Risks = "next_year_risk";
    private const string FileName = "lookup.facts";

    /// <summary>The facts of the last run.</summary>
    /// <param name="output">Folder of the run.</param>
    /// <param name="input">Folder with the shop's files, which may hold its own check tables.</param>
    /// <exception cref="BadInputException">There is no store, or the checks have faults.</exception>
    public static LookupFacts Read(OutputFolder output, string? input)
    {
        if (!Directory.Exists(output.Store))
        {
            throw new BadInputException($"{output.Store}: there is no store yet. Run 'partssignal run' first, or name its folder with --out.");
        }

        CheckTable checks = CheckTableReader.Load(input);
        return new LookupFacts(Kept(StoreSwap.Resolve(output.Store)) ?? FromTables(output), checks);
    }

    /// <summary>
    /// Saves the facts inside the run's store, so that one rename publishes both. Without them an answer would mostly wait
    /// for the engine to open. A store that was only loaded has no facts file; its tables are queried instead.
    /// </summary>
    /// <param name="database">A session over the store, with the results of the run.</param>
    /// <param name="output">The run's draft.</param>
    public static void Keep(Database database, OutputFolder output)
    {
        StoreFacts facts = FactReader.Rows(database, FactReader.Risks(database));
        using FileStream stream = File.Create(Path.Combine(StoreSwap.Resolve(output.Store), FileName));
        FactFile.Write(stream, facts);
    }

    /// <summary>History of the appliance with a serial, or null if the store has none.</summary>
    /// <param name="output">Folder of the run; its key turns the serial into the store's identifier.</param>
    /// <param name="serial">Serial as on the label.</param>
    /// <param name="brands">Possible brands; a null among them matches rows without a brand.</param>
    /// <param name="on">Day of the call.</param>
    public static UnitHistory? History(OutputFolder output, string serial, IEnumerable<string?> brands, DateOnly on)
    {
        if (!File.Exists(output.Key))
        {
            return null;
        }

        var key = IdentityKey.LoadOrMake(output.Key);
        string[] units = [.. brands.Select(b => SerialKey.Create(key, b, serial)).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (units.Length == 0)
        {
            return null;
        }

        using Database database = CurrentStore.Open(output);
        return UnitHistory.Read(database, units, on);
    }

    /// <summary>How serials tell the build date: the shop's table, and the rules that the last load learned and used.</summary>
    /// <param name="output">Folder of the run.</param>
    /// <param name="input">Folder of the shop's table.</param>
    public static SerialCodes DateCodes(OutputFolder output, string input)
    {
        using Database database = CurrentStore.Open(output);
        return SerialCodes.Load(input).With([.. DateCodeRule.Read(database).Where(r => r.InUse).Select(r => r.ToText())]);
    }

    private static StoreFacts? Kept(string store)
    {
        string path = Path.Combine(store, FileName);
        if (!File.Exists(path))
        {
            return null;
        }

        using var bytes = new MemoryStream(File.ReadAllBytes(path));
        return FactFile.Read(bytes);
    }

    // A separate method, so that the engine is loaded only when needed.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static StoreFacts FromTables(OutputFolder output)
    {
        using Database database = CurrentStore.Open(output);
        return FactReader.Rows(database, YearRisks(database, output));
    }

    private static IReadOnlyList<YearRisk> YearRisks(Database database, OutputFolder output)
    {
        string path = Path.Combine(output.Results, Risks + ".parquet");
        if (!File.Exists(path))
        {
            return [];
        }

        database.Execute($"create or replace view {Database.Quote(Risks)} as from read_parquet({Database.Literal(path)})");
        return FactReader.Risks(database);
    }
}
