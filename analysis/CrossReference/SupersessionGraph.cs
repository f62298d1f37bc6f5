namespace PartsSignal.Analysis.CrossReference;

/// <summary>
/// Follows supersession arrows to the numbers that stand at their ends. Strongly connected components by Tarjan
/// (1972), without recursion, so that a chain of any length resolves; members of a cycle stand for themselves.
/// </summary>
internal sealed class SupersessionGraph
{
    private readonly string[] _numbers;
    private readonly Dictionary<string, int> _ids;
    private readonly List<SupersessionArrow>[] _out;
    private readonly Dictionary<int, Replacement>?[] _answers;
    private readonly List<IReadOnlyList<string>> _cycles = [];

    /// <summary>Resolves all arrows.</summary>
    /// <param name="arrows">The arrows.</param>
    /// <param name="asOf">Only those known on this day, or null for all.</param>
    public SupersessionGraph(IEnumerable<SupersessionArrow> arrows, DateOnly? asOf = null)
    {
        SupersessionArrow[] known = [.. arrows.Where(a => asOf is null || a.EffectiveOn is null || a.EffectiveOn <= asOf)];
        _numbers = [.. known.SelectMany(a => new[] { a.Old, a.New }).Distinct().Order(StringComparer.Ordinal)];
        _ids = _numbers.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        _out = [.. _numbers.Select(_ => new List<SupersessionArrow>())];
        foreach (SupersessionArrow arrow in known.GroupBy(a => (a.Old, a.New)).Select(OneOf))
        {
            _out[_ids[arrow.Old]].Add(arrow);
        }

        _answers = new Dictionary<int, Replacement>?[_numbers.Length];
        foreach (int[] component in Components())
        {
            Answer(component);
        }

        _cycles.Sort((a, b) => string.CompareOrdinal(a[0], b[0]));
    }

    /// <summary>What stands for a number; a number without arrows stands for itself.</summary>
    public Resolution Resolve(string number)
    {
        if (!_ids.TryGetValue(number, out int id))
        {
            return new Resolution(number, [new Replacement(number, 1, SupersessionKind.Replaces)], false);
        }

        return new Resolution(
            number,
            [.. _answers[id]!.Values.OrderBy(r => r.Number, StringComparer.Ordinal)],
            _cycles.Any(c => c.Contains(number, StringComparer.Ordinal)));
    }

    // Tarjan hands out components in reverse order: what a component points to is answered before it.
    private void Answer(int[] component)
    {
        int first = component[0];
        if (component.Length > 1 || _out[first].Exists(a => a.New == a.Old))
        {
            _cycles.Add([.. component.Select(c => _numbers[c]).Order(StringComparer.Ordinal)]);
            foreach (int member in component)
            {
                _answers[member] = Itself(member);
            }

            return;
        }

        if (_out[first].Count == 0)
        {
            _answers[first] = Itself(first);
            return;
        }

        bool anyOfThem = _out[first].Count(a => a.Kind == SupersessionKind.Replaces) > 1 || _out[first].Exists(a => a.Kind == SupersessionKind.KitPart);
        var answer = new Dictionary<int, Replacement>();
        foreach (SupersessionArrow arrow in _out[first])
        {
            // several plain replacements of one number are alternatives, nothing says that all are needed; beside a kit any is
            SupersessionKind kind = arrow.Kind == SupersessionKind.Replaces && anyOfThem ? SupersessionKind.Alternative : arrow.Kind;
            int quantity = kind == SupersessionKind.KitPart ? arrow.Quantity : 1;
            foreach ((int end, Replacement further) in _answers[_ids[arrow.New]]!)
            {
                Add(answer, end, new Replacement(_numbers[end], quantity * further.Quantity, Weakest(kind, further.Via)));
            }
        }

        _answers[first] = answer;
    }

    private static void Add(Dictionary<int, Replacement> answer, int end, Replacement found)
    {
        if (answer.TryGetValue(end, out Replacement? there))
        {
            SupersessionKind via = Weakest(there.Via, found.Via);
            int quantity = via == SupersessionKind.Alternative ? Math.Max(there.Quantity, found.Quantity) : there.Quantity + found.Quantity;
            found = new Replacement(found.Number, quantity, via);
        }

        answer[end] = found;
    }

    // told twice in two ways: a piece of a kit before an alternative before a plain replacement
    private static SupersessionArrow OneOf(IEnumerable<SupersessionArrow> same)
    {
        SupersessionArrow first = same.OrderBy(a => a.Kind switch { SupersessionKind.KitPart => 0, SupersessionKind.Alternative => 1, _ => 2 }).First();
        return first with { Quantity = same.Max(a => a.Quantity) };
    }

    private static SupersessionKind Weakest(SupersessionKind a, SupersessionKind b) => a > b ? a : b;

    private Dictionary<int, Replacement> Itself(int id) => new() { [id] = new Replacement(_numbers[id], 1, SupersessionKind.Replaces) };

    private IEnumerable<int[]> Components()
    {
        int count = 0;
        var index = new int[_numbers.Length];
        var low = new int[_numbers.Length];
        var onStack = new bool[_numbers.Length];
        var stack = new Stack<int>();
        var work = new Stack<(int Node, int Next)>();
        for (int root = 0; root < _numbers.Length; root++)
        {
            if (index[root] != 0)
            {
                continue;
            }

            work.Push((root, 0));
            while (work.TryPop(out (int Node, int Next) at))
            {
                int node = at.Node;
                if (at.Next == 0)
                {
                    index[node] = low[node] = ++count;
                    stack.Push(node);
                    onStack[node] = true;
                }
                else
                {
                    low[node] = Math.Min(low[node], low[_ids[_out[node][at.Next - 1].New]]);
                }

                int next = at.Next;
                while (next < _out[node].Count && index[_ids[_out[node][next].New]] is var seen && seen != 0)
                {
                    int target = _ids[_out[node][next].New];
                    low[node] = onStack[target] ? Math.Min(low[node], seen) : low[node];
                    next++;
                }

                if (next < _out[node].Count)
                {
                    work.Push((node, next + 1));
                    work.Push((_ids[_out[node][next].New], 0));
                    continue;
                }

                if (low[node] == index[node])
                {
                    yield return [.. PopUntil(node)];
                }
            }
        }

        List<int> PopUntil(int node)
        {
            var members = new List<int>();
            int member;
            do
            {
                member = stack.Pop();
                onStack[member] = false;
                members.Add(member);
            }
            while (member != node);
            return members;
        }
    }
}

/// <summary>How one number stands in for another.</summary>
public enum SupersessionKind
{
    /// <summary>One for one.</summary>
    Replaces,

    /// <summary>One of several that are all needed.</summary>
    KitPart,

    /// <summary>Any one of several will do.</summary>
    Alternative,
}

/// <summary>An arrow old -> new of a supersession list.</summary>
/// <param name="Old">The number that goes.</param>
/// <param name="New">The number that comes.</param>
/// <param name="Kind">How it stands in.</param>
/// <param name="Quantity">New pieces per old piece, 1 or more.</param>
/// <param name="EffectiveOn">From when, or null if since ever.</param>
internal sealed record SupersessionArrow(string Old, string New, SupersessionKind Kind = SupersessionKind.Replaces, int Quantity = 1, DateOnly? EffectiveOn = null);

/// <summary>A number that stands for another today.</summary>
/// <param name="Number">The number to order.</param>
/// <param name="Quantity">Pieces of it per old piece.</param>
/// <param name="Via">Weakest link on the way: an alternative anywhere makes it an alternative, else a kit anywhere a kit part.</param>
public sealed record Replacement(string Number, int Quantity, SupersessionKind Via);

/// <summary>What stands for a number.</summary>
/// <param name="Number">The number asked for.</param>
/// <param name="Replacements">Its current numbers in ordinal order; itself alone when nothing replaces it or it lies on a cycle.</param>
/// <param name="InCycle">True: the list contradicts itself about this number.</param>
public sealed record Resolution(string Number, IReadOnlyList<Replacement> Replacements, bool InCycle);
