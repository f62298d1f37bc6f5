using System.ComponentModel;
using System.Reflection;
using System.Text;
using PartsSignal.Pipeline.Core;
using Spectre.Console.Cli;

namespace PartsSignal.Pipeline.Commands;

/// <summary>Shells the script is for.</summary>
internal enum Shell
{
    /// <summary>bash.</summary>
    Bash,

    /// <summary>zsh.</summary>
    Zsh,
}

/// <summary>Options of <c>completion</c>.</summary>
internal sealed class CompletionSettings : CommandSettings
{
    [CommandArgument(0, "<SHELL>")]
    [Description("bash or zsh. For bash, add to ~/.bashrc: source <(partssignal completion bash)")]
    public Shell Shell { get; init; }
}

/// <summary>Prints a script that completes verbs, options and their words with the tab key.</summary>
internal sealed class CompletionCommand(ProgramIo io) : Command<CompletionSettings>
{
    public override int Execute(CommandContext context, CompletionSettings settings, CancellationToken cancellationToken)
    {
        io.Out.Write(CompletionScript.For(settings.Shell, VerbList.All));
        return ExitCode.Done;
    }
}

/// <summary>Writes the scripts. Both know every verb, every option, and the words an option takes.</summary>
internal static class CompletionScript
{
    private const string Program = "partssignal";

    /// <summary>The script of one shell.</summary>
    public static string For(Shell shell, IReadOnlyList<Verb> verbs) => shell == Shell.Bash ? Bash(verbs) : Zsh(verbs);

    private static string Bash(IReadOnlyList<Verb> verbs)
    {
        var script = new StringBuilder();
        script.Append(Head("bash")).Append("_partssignal() {\n");
        script.Append("  local cur=\"${COMP_WORDS[COMP_CWORD]}\" prev=\"${COMP_WORDS[COMP_CWORD-1]}\" verb=\"${COMP_WORDS[1]}\"\n");
        script.Append("  COMPREPLY=()\n");
        script.Append("  if [ \"$COMP_CWORD\" -le 1 ]; then COMPREPLY=($(compgen -W \"").Append(Names(verbs)).Append(" --help\" -- \"$cur\")); return; fi\n");
        script.Append("  case \"$verb $prev\" in\n");
        foreach ((Verb verb, VerbOption option) in Options(verbs))
        {
            string? answer = option switch
            {
                { Words.Count: > 0 } => $"-W \"{string.Join(' ', option.Words)}\"",
                { Takes: OptionTakes.Folder } => "-d",
                { Takes: OptionTakes.File } => "-f",
                { Takes: OptionTakes.Text } => "",
                _ => null,
            };
            if (answer is not null)
            {
                string reply = answer.Length == 0 ? "return" : $"COMPREPLY=($(compgen {answer} -- \"$cur\")); return";
                script.Append($"    \"{verb.Name} {option.Name}\") {reply} ;;\n");
            }
        }

        script.Append("  esac\n  case \"$verb\" in\n");
        foreach (Verb verb in verbs)
        {
            script.Append($"    {verb.Name}) COMPREPLY=($(compgen -W \"{Words(verb)}\" -- \"$cur\")) ;;\n");
        }

        return script.Append("  esac\n}\ncomplete -o default -F _partssignal ").Append(Program).Append('\n').ToString();
    }

    private static string Zsh(IReadOnlyList<Verb> verbs)
    {
        var script = new StringBuilder();
        script.Append("#compdef ").Append(Program).Append('\n').Append(Head("zsh")).Append("_partssignal() {\n");
        script.Append("  local verb=\"${words[2]}\" prev=\"${words[CURRENT-1]}\"\n");
        script.Append("  if (( CURRENT == 2 )); then compadd -- ").Append(Names(verbs)).Append(" --help; return; fi\n");
        script.Append("  case \"$verb $prev\" in\n");
        foreach ((Verb verb, VerbOption option) in Options(verbs))
        {
            string? answer = option switch
            {
                { Words.Count: > 0 } => $"compadd -- {string.Join(' ', option.Words)}; return",
                { Takes: OptionTakes.Folder } => "_files -/; return",
                { Takes: OptionTakes.File } => "_files; return",
                { Takes: OptionTakes.Text } => "return",
                _ => null,
            };
            if (answer is not null)
            {
                script.Append($"    \"{verb.Name} {option.Name}\") {answer} ;;\n");
            }
        }

        script.Append("  esac\n  case \"$verb\" in\n");
        foreach (Verb verb in verbs)
        {
            script.Append($"    {verb.Name}) compadd -- {Words(verb)}; [[ \"${{words[CURRENT]}}\" == -* ]] || _files ;;\n");
        }

        return script.Append("  esac\n}\ncompdef _partssignal ").Append(Program).Append('\n').ToString();
    }

    private static string Head(string shell) => $"# Tab completion of {Program} for {shell}. Printed by: {Program} completion {shell}\n";

    private static string Names(IReadOnlyList<Verb> verbs) => string.Join(' ', verbs.Select(v => v.Name));

    private static string Words(Verb verb) => string.Join(' ', VerbOption.ArgumentWords(verb).Concat(VerbOption.From(verb).Select(o => o.Name)));

    private static IEnumerable<(Verb, VerbOption)> Options(IReadOnlyList<Verb> verbs) => verbs.SelectMany(v => VerbOption.From(v).Select(o => (v, o)));
}

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
