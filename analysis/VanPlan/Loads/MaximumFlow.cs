namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>
/// Maximum flow by blocking flows on level graphs (Dinic 1970), in whole numbers. Built once; capacities of the arcs
/// from the source and to the sink are set anew before each run.
/// </summary>
internal sealed class MaximumFlow
{
    /// <summary>A capacity nothing can fill.</summary>
    public const long Unlimited = long.MaxValue / 4;

    private readonly int[] _first;
    private readonly int[] _arc;
    private readonly int[] _head;
    private readonly long[] _capacity;
    private readonly long[] _residual;
    private readonly int[] _level;
    private readonly int[] _at;
    private readonly int[] _queue;
    private readonly int[] _path;

    /// <summary>Nodes 0..count-1 beside source and sink; the arcs given are unlimited.</summary>
    public MaximumFlow(int count, IReadOnlyList<(int From, int To)> arcs)
    {
        (Source, Sink) = (count, count + 1);
        int total = arcs.Count + (2 * count);
        _head = new int[2 * total];
        _capacity = new long[2 * total];
        _residual = new long[2 * total];
        int[] tail = new int[2 * total];
        for (int n = 0; n < count; n++)
        {
            (tail[4 * n], _head[4 * n]) = (Source, n);
            (tail[(4 * n) + 2], _head[(4 * n) + 2]) = (n, Sink);
        }

        for (int a = 0; a < arcs.Count; a++)
        {
            int i = (4 * count) + (2 * a);
            (tail[i], _head[i], _capacity[i]) = (arcs[a].From, arcs[a].To, Unlimited);
        }

        for (int i = 0; i < tail.Length; i += 2)
        {
            (tail[i + 1], _head[i + 1]) = (_head[i], tail[i]);
        }

        (_first, _arc) = Order(tail, count + 2);
        _level = new int[count + 2];
        _at = new int[count + 2];
        _queue = new int[count + 2];
        _path = new int[count + 2];
    }

    private int Source { get; }

    private int Sink { get; }

    /// <summary>Sets what a node brings in (source arc) and what it costs (sink arc), and forgets any flow.</summary>
    public void Set(int node, long worth, long price)
    {
        _capacity[4 * node] = worth;
        _capacity[(4 * node) + 2] = price;
    }

    /// <summary>Pushes all flow there is.</summary>
    public void Run()
    {
        _capacity.CopyTo(_residual, 0);
        while (Label())
        {
            _first.AsSpan(0, _at.Length).CopyTo(_at);
            while (Augment())
            {
            }
        }
    }

    /// <summary>After a run: the node lies on the source's side of the smallest minimum cut.</summary>
    public bool OnSourceSide(int node) => _level[node] >= 0;

    private static (int[] First, int[] Arc) Order(int[] tail, int nodes)
    {
        int[] first = new int[nodes + 1];
        foreach (int t in tail)
        {
            first[t + 1]++;
        }

        for (int n = 0; n < nodes; n++)
        {
            first[n + 1] += first[n];
        }

        int[] next = first.ToArray();
        int[] arc = new int[tail.Length];
        for (int i = 0; i < tail.Length; i++)
        {
            arc[next[tail[i]]++] = i;
        }

        return (first, arc);
    }

    private bool Label()
    {
        Array.Fill(_level, -1);
        _level[Source] = 0;
        _queue[0] = Source;
        int end = 1;
        for (int q = 0; q < end; q++)
        {
            int node = _queue[q];
            for (int i = _first[node]; i < _first[node + 1]; i++)
            {
                int arc = _arc[i];
                int to = _head[arc];
                if (_residual[arc] > 0 && _level[to] < 0)
                {
                    _level[to] = _level[node] + 1;
                    _queue[end++] = to;
                }
            }
        }

        return _level[Sink] >= 0;
    }

    private bool Augment()
    {
        int depth = 0;
        int node = Source;
        while (node != Sink)
        {
            if (_at[node] < _first[node + 1])
            {
                int arc = _arc[_at[node]];
                if (_residual[arc] > 0 && _level[_head[arc]] == _level[node] + 1)
                {
                    _path[depth++] = arc;
                    node = _head[arc];
                    continue;
                }
            }
            else if (node == Source)
            {
                return false;
            }
            else
            {
                node = _head[_path[--depth] ^ 1];
            }

            _at[node]++;
        }

        Push(depth);
        return true;
    }

    private void Push(int depth)
    {
        long amount = long.MaxValue;
        for (int i = 0; i < depth; i++)
        {
            amount = Math.Min(amount, _residual[_path[i]]);
        }

        for (int i = 0; i < depth; i++)
        {
            _residual[_path[i]] -= amount;
            _residual[_path[i] ^ 1] += amount;
        }
    }
}
