namespace PartsSignal.Pipeline.Commands;

/// <summary>All verbs, in the order of the help.</summary>
internal static class VerbList
{
    public static IReadOnlyList<Verb> All { get; } =
    [
        Verb.Create<RunCommand, RunSettings>(
            "run", "All steps, from the shop's files to its pages; also what happens without a command.", "--input", "data-sample", "--out", "out"),
        Verb.Create<InspectCommand, InspectSettings>("inspect", "Says what files look like and proposes how to read them.", "shop/jobs.csv", "--write"),
        Verb.Create<LoadCommand, LoadSettings>("load", "Reads the shop's files and makes them the current store.", "--input", "data-sample", "--out", "out"),
        Verb.Create<RatesCommand, RatesSettings>("rates", "Failure rates with their intervals and their basis.", "--component", "inlet_valve"),
        Verb.Create<LookupCommand, LookupSettings>(
            "lookup", "What a call will probably need, and what to check first.", "--model", "QU-LT", "--complaint", "does not fill", "--age", "6"),
        Verb.Create<PartCommand, PartSettings>("part", "The cross-reference of one number: current number, fits, price, lead time, quality.", "0052105"),
        Verb.Create<VanCommand, VanSettings>("van", "What each van should carry for its money and space.", "--van", "2", "--budget", "2000"),
        Verb.Create<ReportCommand, ReportSettings>("report", "Writes the monthly failure report from the last run's results.", "--month", "2026-09"),
        Verb.Create<ServeCommand, ServeSettings>("serve", "Serves reports and lookups on this machine's own address.", "--port", "8710"),
        Verb.Create<SampleCommand, SampleSettings>(
            "sample", "Writes a fictional shop of any size, with its truth.", "--jobs", "20000", "--seed", "1", "--output", "shop"),
        Verb.Create<CompletionCommand, CompletionSettings>(
            "completion", "Prints a script that completes verbs and options with the tab key.", "bash"),
    ];
}
