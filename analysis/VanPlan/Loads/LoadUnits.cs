namespace PartsSignal.Analysis.VanPlan.Loads;

/// <summary>The pieces that can make a difference, numbered through: part 0's first, second, ..., part 1's first, ...</summary>
internal sealed class LoadUnits
{
    private readonly int[] _start;

    public LoadUnits(int[] start)
    {
        _start = start;
        Part = new int[start[^1]];
        for (int p = 0; p + 1 < start.Length; p++)
        {
            Array.Fill(Part, p, start[p], start[p + 1] - start[p]);
        }

        Gain = new double[start[^1]];
        Charge = new double[start[^1]];
    }

    /// <summary>Number of units.</summary>
    public int Total => Part.Length;

    /// <summary>Part of each unit.</summary>
    public int[] Part { get; }

    /// <summary>Worth of the jobs that hang on this unit alone.</summary>
    public double[] Gain { get; }

    /// <summary>Charge of each unit.</summary>
    public double[] Charge { get; }

    /// <summary>Units of a part.</summary>
    public int Count(int part) => _start[part + 1] - _start[part];

    /// <summary>Number of a part's piece, counted from 1.</summary>
    public int Of(int part, int piece) => _start[part] + piece - 1;

    /// <summary>Which piece of its part a unit is, counted from 1.</summary>
    public int Piece(int unit) => unit - _start[Part[unit]] + 1;
}
