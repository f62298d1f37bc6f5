using System.Numerics;

namespace PartsSignal.Analysis.AgeCurves;

/// <summary>Figures by family and whole year of age.</summary>
internal sealed class FamilyAges<T>
    where T : struct, INumber<T>
{
    private readonly Dictionary<string, List<(int Age, T Value)>> _byFamily = new(StringComparer.Ordinal);
    private readonly SortedDictionary<int, T> _byAge = [];

    public FamilyAges(IEnumerable<(string Family, int Age, T Value)> cells)
    {
        foreach ((string family, int age, T value) in cells)
        {
            if (!_byFamily.TryGetValue(family, out List<(int, T)>? list))
            {
                _byFamily[family] = list = [];
            }

            list.Add((age, value));
            _byAge[age] = _byAge.GetValueOrDefault(age) + value;
        }
    }

    public IEnumerable<string> Families => _byFamily.Keys;

    public IReadOnlyList<(int Age, T Value)> Ages(string family) => _byFamily.GetValueOrDefault(family, []);

    public T Total(string family) => Sum(Ages(family).Select(a => a.Value));

    public T Total() => Sum(_byAge.Values);

    /// <summary>Sum over all families from the year before an age to the year after it.</summary>
    public T Window(int age) => Sum(_byAge.Where(a => Math.Abs(a.Key - age) <= 1).Select(a => a.Value));

    /// <summary>Sum over all families at one age.</summary>
    public T At(int age) => _byAge.GetValueOrDefault(age);

    private static T Sum(IEnumerable<T> values) => values.Aggregate(T.Zero, (a, b) => a + b);
}
