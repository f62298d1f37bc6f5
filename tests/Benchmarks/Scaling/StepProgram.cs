using System.Diagnostics;
using System.Globalization;
using DuckDB.NET.Data;
using PartsSignal.Analysis.Sql;
using PartsSignal.Benchmarks.Loading;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Learning;
using PartsSignal.Pipeline.Planning;
using PartsSignal.Pipeline.Publishing;
using PartsSignal.Pipeline.Running;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Benchmarks.Scaling;

/// <summary>One step of the program over files or a store that are there: what a process of its own does for <c>scale</c>.</summary>
internal static class StepProgram
{
    /// <summary>Runs it and writes its seconds and the megabytes it allocated.</summary>
    public static async Task RunAsync(string step, string shop, string output)
    {
        var folder = new OutputFolder(output);
        Directory.CreateDirectory(output);
        using var context = new RunContext(shop, folder, ShopFile.Load(shop), TimeProvider.System);
        long allocated = GC.GetTotalAllocatedBytes();
        long started = Stopwatch.GetTimestamp();
        await (step switch
        {
            ScaleSteps.Ingest => StageAsync(context),
            ScaleSteps.TypedCopy => Copy(context, "all_varchar = false"),
            ScaleSteps.TextCopy => Copy(context, "all_varchar = true"),
            "rates-sql" => RatesAlone(context),
            "rates" => new RatesStep().RunAsync(context, CancellationToken.None),
            "age-curves" => new CurvesStep().RunAsync(context, CancellationToken.None),
            "trends" => new TrendsStep().RunAsync(context, CancellationToken.None),
            "training" => new LearnStep().RunAsync(context, CancellationToken.None),
            "van-plan" => new PlanStep().RunAsync(context, CancellationToken.None),
            _ => throw new ArgumentException($"No step '{step}'."),
        }).ConfigureAwait(false);
        double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{seconds:0.000} {(GC.GetTotalAllocatedBytes() - allocated) / (1024 * 1024)}"));
    }

    private static async Task StageAsync(RunContext context)
    {
        var stager = new Stager(context.Output, context.Settings, StagingTools.For(context.Output, context.Input, SerialCodes.Load(context.Input)), TableStagers.Make);
        await new ShopStaging(stager).RunAsync(SourceFile.Find(context.Input, context.Settings), CancellationToken.None).ConfigureAwait(false);
    }

    // The engine by itself: all its threads, its own limits, the separator and the header told.
    private static Task Copy(RunContext context, string types)
    {
        string target = Path.Combine(context.Output.Root, "copy.parquet");
        using var engine = new DuckDBConnection("DataSource=:memory:");
        engine.Open();
        using DuckDBCommand copy = engine.CreateCommand();
        copy.CommandText = $"copy (from read_csv({Database.Literal(Path.Combine(context.Input, BigShop.Logs))}, header = true, delim = ',', {types})) to {Database.Literal(target)} (format parquet)";
        copy.ExecuteNonQuery();
        File.Delete(target);
        return Task.CompletedTask;
    }

    // The rates' queries as anyone could run them by hand: no checks, no estimators, no result tables.
    private static Task RatesAlone(RunContext context)
    {
        using Database database = CurrentStore.OpenToWrite(context.Output);
        database.Execute("set variable as_of = $day", ("day", context.Settings.AsOf));
        database.Execute("set variable callback_days = $days", ("days", context.Settings.CallbackDays));
        foreach (SqlModel model in SqlModels.Order(ResultModels.Rates, database.Has))
        {
            database.Execute($"create table {Database.Quote(model.Table)} as {model.Text}");
        }

        return Task.CompletedTask;
    }
}
