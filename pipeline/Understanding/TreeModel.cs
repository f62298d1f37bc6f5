using System.Globalization;

namespace PartsSignal.Pipeline.Understanding;

/// <summary>
/// Log odds as a sum over small trees. Every tree asks the same questions of all rows (each level one question), so
/// that its answers are the bits of a place in a table of leaves (Kohavi 1994; Prokhorenkova et al. 2018).
/// Leaves are whole thousandths: a sum is the same on every machine.
/// </summary>
/// <param name="Bias">Log odds without any evidence, in thousandths.</param>
/// <param name="Trees">The trees.</param>
internal sealed record TreeModel(int Bias, IReadOnlyList<TreeModel.Tree> Trees)
{
    /// <summary>Log odds of a row, in thousandths.</summary>
    public int Score(ReadOnlySpan<byte> levels)
    {
        int sum = Bias;
        foreach (Tree tree in Trees)
        {
            int leaf = 0;
            for (int i = 0; i < tree.Features.Length; i++)
            {
                leaf |= levels[tree.Features[i]] >= tree.Cuts[i] ? 1 << i : 0;
            }

            sum += tree.Leaves[leaf];
        }

        return sum;
    }

    /// <summary>The model as lines of text.</summary>
    public IEnumerable<string> Lines(string name)
    {
        yield return string.Create(CultureInfo.InvariantCulture, $"{name} {Bias} {Trees.Count}");
        foreach (Tree tree in Trees)
        {
            yield return string.Join(' ', tree.Features.Zip(tree.Cuts).Select(s => $"{s.First}:{s.Second}").Concat(tree.Leaves.Select(l => l.ToString(CultureInfo.InvariantCulture))));
        }
    }

    /// <summary>Reads what <see cref="Lines"/> wrote.</summary>
    public static (string Name, TreeModel Model) Read(TextReader lines)
    {
        string[] head = lines.ReadLine()!.Split(' ');
        var trees = new List<Tree>();
        for (int i = 0; i < int.Parse(head[2], CultureInfo.InvariantCulture); i++)
        {
            string[] words = lines.ReadLine()!.Split(' ');
            string[][] splits = [.. words.TakeWhile(w => w.Contains(':')).Select(w => w.Split(':'))];
            trees.Add(new Tree(
                [.. splits.Select(s => int.Parse(s[0], CultureInfo.InvariantCulture))],
                [.. splits.Select(s => byte.Parse(s[1], CultureInfo.InvariantCulture))],
                [.. words.Skip(splits.Length).Select(w => int.Parse(w, CultureInfo.InvariantCulture))]));
        }

        return (head[0], new TreeModel(int.Parse(head[1], CultureInfo.InvariantCulture), trees));
    }

    /// <summary>One tree.</summary>
    /// <param name="Features">The feature each level asks about.</param>
    /// <param name="Cuts">The level from which on its answer is yes.</param>
    /// <param name="Leaves">Thousandths, by the answers as bits.</param>
    internal sealed record Tree(int[] Features, byte[] Cuts, int[] Leaves);
}
