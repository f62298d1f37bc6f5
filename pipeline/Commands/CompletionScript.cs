using System.Text;

namespace PartsSignal.Pipeline.Commands;

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
