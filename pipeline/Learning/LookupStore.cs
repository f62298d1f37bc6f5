using System.Runtime.CompilerServices;
using PartsSignal.Analysis.CheckOrder;
using PartsSignal.Analysis.Prediction.Answers;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Publishing;

namespace PartsSignal.Pipeline.Learning;

/// <summary>Reads what answers need from the last run.</summary>
internal static class LookupStore
{
    private const string Risks = "next_year_risk";
    private const string FileName = "lookup.facts";

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

        CheckTable checks = CheckTableReader.Load(input);
        return new LookupFacts(Kept(StoreSwap.Resolve(output.Store)) ?? FromTables(output), checks);
    }

    /// <summary>
    /// Keeps the facts of a run within its store, whose one rename publishes both: opening the engine is most of what an
    /// answer would wait for. A store that was only loaded has none, and is asked itself.
    /// </summary>
    /// <param name="database">A session over the store, with the results of the run.</param>
    /// <param name="output">The run's draft.</param>
    public static void Keep(Database database, OutputFolder output)
    {
        StoreFacts facts = FactReader.Rows(database, FactReader.Risks(database));
        using FileStream stream = File.Create(Path.Combine(StoreSwap.Resolve(output.Store), FileName));
        FactFile.Write(stream, facts);
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
        string[] units = [.. brands.Select(b => SerialKey.Create(key, b, serial)).OfType<string>().Distinct(StringComparer.Ordinal)];
        if (units.Length == 0)
        {
            return null;
        }

        using Database database = CurrentStore.Open(output);
        return UnitHistory.Read(database, units, on);
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

    // Apart, so that the engine is not even loaded where it is not needed.
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
