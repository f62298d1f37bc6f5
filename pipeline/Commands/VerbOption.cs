using System.Reflection;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>An option of a verb as a shell sees it.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Words">Words it takes; empty: free text, or none.</param>
/// <param name="Takes">What follows it.</param>
internal sealed record VerbOption(string Name, IReadOnlyList<string> Words, OptionTakes Takes)
{
    /// <summary>All options of a verb, by name.</summary>
    public static IReadOnlyList<VerbOption> From(Verb verb) =>
    [
        .. verb.Settings.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Select(p => (p.PropertyType, Option: p.GetCustomAttribute<CommandOptionAttribute>()))
            .Where(p => p.Option is not null)
            .SelectMany(p => p.Option!.LongNames.Select(n => From("--" + n, p.Option.ValueName, p.PropertyType)))
            .Append(new VerbOption("--help", [], OptionTakes.Nothing))
            .OrderBy(o => o.Name, StringComparer.Ordinal),
    ];

    /// <summary>Words the verb's own argument takes; empty: none, or free text.</summary>
    public static IReadOnlyList<string> ArgumentWords(Verb verb) =>
    [
        .. verb.Settings.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.GetCustomAttribute<CommandArgumentAttribute>() is not null)
            .SelectMany(p => WordsOf(p.PropertyType)),
    ];

    private static VerbOption From(string name, string? value, Type type) => new(name, WordsOf(type), value switch
    {
        null => OptionTakes.Nothing,
        "FOLDER" or "DIR" => OptionTakes.Folder,
        "FILE" => OptionTakes.File,
        _ => OptionTakes.Text,
    });

    private static string[] WordsOf(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain.IsEnum ? [.. Enum.GetNames(plain).Select(n => n.ToLowerInvariant())] : [];
    }
}

/// <summary>What follows an option.</summary>
internal enum OptionTakes
{
    Nothing,
    Text,
    Folder,
    File,
}
