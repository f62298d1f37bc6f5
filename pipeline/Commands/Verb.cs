using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>A verb of the program.</summary>
/// <param name="Name">As typed.</param>
/// <param name="What">One sentence for the help.</param>
/// <param name="Example">A command line that works on the sample shop.</param>
/// <param name="Settings">Class of its options.</param>
/// <param name="Add">Makes it known to the command line.</param>
internal sealed record Verb(string Name, string What, string[] Example, Type Settings, Func<IConfigurator, string, ICommandConfigurator> Add)
{
    /// <summary>A verb with its command and its options.</summary>
    public static Verb Create<TCommand, TSettings>(string name, string what, params string[] example)
        where TCommand : class, ICommand
        where TSettings : CommandSettings =>
        new(name, what, [name, .. example], typeof(TSettings), (config, verb) => config.AddCommand<TCommand>(verb));
}
