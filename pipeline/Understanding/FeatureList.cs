namespace PartsSignal.Pipeline.Understanding;

/// <summary>Evidence as small whole numbers, 0 to 15: the same on every machine, and few enough that nothing can be learned by heart.</summary>
internal sealed class FeatureList
{
    /// <summary>Highest level.</summary>
    public const byte Top = 15;

    private static readonly double[] Shares = [0.001, 0.02, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.9995];
    private static readonly double[] Counts = [0.5, 1.5, 2.5, 3.5, 5.5, 8.5, 13, 21, 36, 61, 101, 301, 1001, 5001, 20001];
    private static readonly double[] Sizes = [0.0001, 0.5, 1.01, 2.01, 3.5, 5.5, 10.5, 20.5, 40.5, 80.5, 150, 400, 1000, 5000, 50000];
    private static readonly double[] Gaps = [-30, -0.5, 0.001, 0.6, 1.6, 2.6, 4.6, 7.6, 14.6, 30.6, 60.6, 200, 800, 1600, 4000];
    private readonly List<string> _names = [];
    private readonly List<byte> _levels = [];

    /// <summary>Level of a score between 0 and 1.</summary>
    public static byte LevelOf(double score) => (byte)Math.Clamp((int)Math.Round(score * Top), 0, Top);

    /// <summary>Names, in order.</summary>
    public IReadOnlyList<string> Names => _names;

    /// <summary>Levels, in order.</summary>
    public IReadOnlyList<byte> Levels => _levels;

    /// <summary>Adds a share, 0 to 1.</summary>
    public void Share(string name, double value) => Add(name, value, Shares);

    /// <summary>Adds a number of things.</summary>
    public void Count(string name, double value) => Add(name, value, Counts);

    /// <summary>Adds an amount.</summary>
    public void Size(string name, double value) => Add(name, value, Sizes);

    /// <summary>Adds days between two dates; null: there are no two.</summary>
    public void Gap(string name, double? days) => Add(name, days ?? double.MinValue, Gaps);

    /// <summary>Adds yes or no.</summary>
    public void Flag(string name, bool value) => Add(name, value ? 1 : 0, Shares);

    /// <summary>Adds a level as it is.</summary>
    public void Level(string name, int level)
    {
        _names.Add(name);
        _levels.Add((byte)Math.Clamp(level, 0, Top));
    }

    private void Add(string name, double value, double[] cuts)
    {
        int level = 0;
        while (level < cuts.Length && value >= cuts[level])
        {
            level++;
        }

        Level(name, level);
    }
}
