using System.Text.RegularExpressions;

namespace PartsSignal.EndToEnd.Tests;

/// <summary>
/// The namespaces of one project and which of them uses which. Read from the sources: <c>using</c> lines, names written
/// with their namespace, and types of an enclosing namespace, which need neither.
/// </summary>
internal sealed partial class NamespaceLayers
{
    private readonly SortedDictionary<string, SortedDictionary<string, string>> _uses = new(StringComparer.Ordinal);

    /// <summary>Reads a project.</summary>
    /// <param name="sources">Path and text of each source file.</param>
    /// <param name="root">Root namespace of the project.</param>
    public NamespaceLayers(IEnumerable<(string Path, string Text)> sources, string root)
    {
        var files = sources.Select(s => (s.Path, Text: Plain().Replace(s.Text, " "))).Select(s => (s.Path, s.Text, Namespace: Declaration().Match(s.Text).Groups[1].Value))
            .Where(f => f.Namespace.Length > 0).ToList();
        string[] names = [.. files.Select(f => f.Namespace).Distinct().OrderByDescending(n => n.Length)];
        ILookup<string, string> types = files.SelectMany(f => TypeName().Matches(f.Text).Select(m => (f.Namespace, Type: m.Groups[1].Value))).ToLookup(t => t.Namespace, t => t.Type);
        foreach ((string path, string text, string home) in files)
        {
            SortedDictionary<string, string> uses = _uses.TryGetValue(Short(home), out var known) ? known : _uses[Short(home)] = new(StringComparer.Ordinal);
            string body = Using().Replace(text, " ");
            IEnumerable<string> imported = Using().Matches(text).Select(m => names.FirstOrDefault(n => m.Groups[1].Value == n || m.Groups[1].Value.StartsWith(n + ".", StringComparison.Ordinal))).OfType<string>();
            HashSet<string> said = Said(body);
            IEnumerable<string> qualified = names.Where(n => Prefixes(n, root).Any(p => types[n].Any(t => said.Contains($"{p}.{t}"))));
            IEnumerable<string> enclosing = names.Where(n => home.StartsWith(n + ".", StringComparison.Ordinal) && types[n].Any(said.Contains));
            foreach (string used in imported.Concat(qualified).Concat(enclosing).Where(n => n != home))
            {
                uses.TryAdd(Short(used), Path.GetFileName(path));
            }
        }

        string Short(string name) => name == root ? "" : name[(root.Length + 1)..];
    }

    /// <summary>Every namespace of the project, without its root.</summary>
    public IEnumerable<string> Names => _uses.Keys;

    /// <summary>Uses that point up, or sideways, given the layers from the bottom to the top.</summary>
    public IReadOnlyList<string> Upward(IReadOnlyList<string> layers) =>
        [.. from home in _uses
            from used in home.Value
            where IndexOf(layers, used.Key) >= IndexOf(layers, home.Key)
            select $"{home.Key} uses {used.Key} ({used.Value})"];

    /// <summary>Namespaces that use themselves by way of others; empty if there is no circle.</summary>
    public IReadOnlyList<string> InCircles() => [.. _uses.Keys.Where(name => Reached(name).Contains(name))];

    // Every name of a text and its beginnings: of "A.B.C" also "A.B" and "A".
    private static HashSet<string> Said(string text)
    {
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (Match name in DottedName().Matches(text))
        {
            for (int end = name.Length; end > 0 && said.Add(name.Value[..end]);)
            {
                end = name.Value.LastIndexOf('.', end - 1);
            }
        }

        return said;
    }

    private static IEnumerable<string> Prefixes(string name, string root)
    {
        yield return name;
        if (name.Length > root.Length)
        {
            yield return name[(root.Length + 1)..];
        }

        if (name.Count(c => c == '.') > root.Count(c => c == '.') + 1)
        {
            yield return name[(name.LastIndexOf('.') + 1)..];
        }
    }

    private HashSet<string> Reached(string from)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var next = new Queue<string>(_uses[from].Keys);
        while (next.TryDequeue(out string? name))
        {
            if (reached.Add(name))
            {
                foreach (string further in _uses[name].Keys)
                {
                    next.Enqueue(further);
                }
            }
        }

        return reached;
    }

    private static int IndexOf(IReadOnlyList<string> layers, string name) =>
        Enumerable.Range(0, layers.Count).Where(i => layers[i] == name).DefaultIfEmpty(-1).First() is >= 0 and int place
            ? place
            : throw new InvalidDataException($"'{name}' is in no layer: add it to the list at its place.");

    [GeneratedRegex(@"(?<![\w.])\w+(?:\.\w+)*")]
    private static partial Regex DottedName();

    [GeneratedRegex("""//[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])'""")]
    private static partial Regex Plain();

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Declaration();

    [GeneratedRegex(@"^using (?:static )?(?:\w+ = )?([\w.]+)[^;\n]*;", RegexOptions.Multiline)]
    private static partial Regex Using();

    [GeneratedRegex(@"^(?:public |internal )?(?:sealed |static |abstract |readonly |partial )*(?:class|record struct|record|struct|enum|interface|delegate [\w<>?\[\], ]+?) (\w+)", RegexOptions.Multiline)]
    private static partial Regex TypeName();
}
