using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>A command of the program.</summary>
/// <param name="Name">As typed.</param>
/// <param name="What">One sentence for the help.</param>
/// <param name="Example">A command line that works on the sample shop.</param>
/// <param name="Settings">Class of its options.</param>
/// <param name="Add">Makes it known to the command line.</param>
internal sealed record Verb(string Name, string What, string[] Example, Type Settings, Func<IConfigurator, string, ICommandConfigurator> Add)
{
    /// <summary>A verb for a command class and its settings class.</summary>
    public static Verb Create<TCommand, TSettings>(string name, string what, params string[] example)
        where TCommand : class, ICommand
        where TSettings : CommandSettings =>
        new(name, what, [name, .. example], typeof(TSettings), (config, verb) => config.AddCommand<TCommand>(verb));
}

/// <summary>All commands, in the order of the help.</summary>
internal static class VerbList
{
    public static IReadOnlyList<Verb> All { get; } =
    [
        Verb.Create<RunCommand, RunSettings>(
            "run", "Does everything, from the shop's files to the report. Also runs if no command is given.", "--input", "data-sample", "--out", "out"),
        Verb.Create<InspectCommand, InspectSettings>("inspect", "Shows how files will be read, and asks about anything unclear.", "shop/jobs.csv", "--write"),
        Verb.Create<LoadCommand, LoadSettings>("load", "Reads the shop's files into the store.", "--input", "data-sample", "--out", "out"),
        Verb.Create<ReviewCommand, ReviewSettings>(
            "review", "Asks about unknown words and numbers in one workbook, and reads your answers.", "--write", "review-questions.xlsx"),
        Verb.Create<RatesCommand, RatesSettings>("rates", "Shows how often parts fail, with ranges.", "--component", "inlet_valve"),
        Verb.Create<LookupCommand, LookupSettings>(
            "lookup", "Shows what a call will probably need, and what to check first.", "--model", "QU-LT", "--complaint", "does not fill", "--age", "6"),
        Verb.Create<PartCommand, PartSettings>("part", "Shows one part: current number, what it fits, price, lead time, quality.", "0052105"),
        Verb.Create<VanCommand, VanSettings>("van", "Shows what each van should carry for its money and space.", "--van", "2", "--budget", "2000"),
        Verb.Create<ReportCommand, ReportSettings>("report", "Writes the monthly report from the last run.", "--month", "2026-09"),
        Verb.Create<BenchCommand, BenchSettings>("bench", "Opens pages in your browser for everything: files, questions, results, settings.", "--no-browser"),
        Verb.Create<ServeCommand, ServeSettings>("serve", "Serves the reports and lookups to browsers on this computer.", "--port", "8710"),
        Verb.Create<UndoCommand, UndoSettings>("undo", "Lists the last updates of a shop of the bench, and goes back to one.", "--to", "3"),
        Verb.Create<BackupCommand, BackupSettings>("backup", "Saves a shop of the bench in one zip file.", "shop-backup.zip"),
        Verb.Create<RestoreCommand, RestoreSettings>("restore", "Opens a backup as a shop of the bench.", "shop-backup.zip"),
        Verb.Create<ForgetCommand, ForgetSettings>(
            "forget", "Takes a customer's identifiers out of the store and keeps them out.", "--customer", "07700900000"),
        Verb.Create<SampleCommand, SampleSettings>(
            "sample", "Writes an invented shop of any size, with the right answers.", "--jobs", "20000", "--seed", "1", "--output", "shop"),
        Verb.Create<CompletionCommand, CompletionSettings>(
            "completion", "Prints a script that completes commands and options with the Tab key.", "bash"),
    ];

    /// <summary>The commands that a command line can mean: the one it names first, or all.</summary>
    /// <remarks>The library inspects the options of every command it knows, which delays short commands.</remarks>
    public static IEnumerable<Verb> For(string[] args) =>
        args.Length > 0 && All.FirstOrDefault(v => v.Name == args[0]) is { } named ? [named] : All;
}
