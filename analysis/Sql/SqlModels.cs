using System.Collections.Concurrent;

namespace PartsSignal.Analysis.Sql;

/// <summary>All tables that queries make, and the order in which they can be made: it follows from what each reads.</summary>
public static class SqlModels
{
    private static readonly string[] Layers = ["intermediate", "marts", "results"];
    private static readonly ConcurrentDictionary<string, SqlModel> Loaded = new(StringComparer.Ordinal);

    private static readonly Dictionary<string, string> Paths = Layers.SelectMany(SqlText.List)
        .Where(p => !Path.GetFileNameWithoutExtension(p).Contains('.', StringComparison.Ordinal))
        .ToDictionary(p => Path.GetFileNameWithoutExtension(p), StringComparer.Ordinal);

    /// <summary>Every table, in ordinal order of their names.</summary>
    public static IReadOnlyList<SqlModel> All => [.. Paths.Keys.Order(StringComparer.Ordinal).Select(t => Find(t)!)];

    /// <summary>The tables of one folder, for example <c>results/rates</c>, in ordinal order of their names.</summary>
    public static IReadOnlyList<SqlModel> In(string folder) =>
        [.. SqlText.List(folder).Select(p => Path.GetFileNameWithoutExtension(p)).Where(Paths.ContainsKey).Select(t => Find(t)!)];

    /// <summary>The query that makes a table, or null if none does.</summary>
    public static SqlModel? Find(string table) => Paths.TryGetValue(table, out string? path) ? Loaded.GetOrAdd(path, SqlModel.Load) : null;

    /// <summary>
    /// The tables wanted and those they read that are not there yet, each after all that it reads. The order is the same
    /// whatever the order of the wanted ones.
    /// </summary>
    /// <param name="wanted">Tables to make, whether they are there or not.</param>
    /// <param name="exists">True for a table that need not be made for others to read it.</param>
    /// <exception cref="InvalidDataException">Tables read each other in a circle.</exception>
    public static IReadOnlyList<SqlModel> Order(IEnumerable<SqlModel> wanted, Func<string, bool> exists) => Order(wanted, exists, Find);

    internal static IReadOnlyList<SqlModel> Order(IEnumerable<SqlModel> wanted, Func<string, bool> exists, Func<string, SqlModel?> find)
    {
        var targets = wanted.GroupBy(m => m.Table).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var order = new List<SqlModel>();
        var finished = new Dictionary<string, bool>(StringComparer.Ordinal);
        foreach (SqlModel target in targets.Values.OrderBy(m => m.Table, StringComparer.Ordinal))
        {
            Visit(target);
        }

        return order;

        void Visit(SqlModel model)
        {
            if (!finished.TryAdd(model.Table, false))
            {
                if (!finished[model.Table])
                {
                    throw new InvalidDataException($"{model.Path} reads a table that is made from it.");
                }

                return;
            }

            foreach (string table in model.Reads)
            {
                if (targets.TryGetValue(table, out SqlModel? read) || (!exists(table) && (read = find(table)) is not null))
                {
                    Visit(read);
                }
            }

            finished[model.Table] = true;
            order.Add(model);
        }
    }
}

/// <summary>
/// Tables that SQL makes over the store, by capability. Figures that need an estimator are written by their capability
/// from the counts gathered here.
/// </summary>
public static class ResultModels
{
    /// <summary>What the part predictor counts beside its odds.</summary>
    public static IReadOnlyList<SqlModel> Prediction => SqlModels.In("results/prediction");

    /// <summary>Counts behind the month figures.</summary>
    public static IReadOnlyList<SqlModel> Months => SqlModels.In("results/months");

    /// <summary>Counts and exposure behind the failure rates.</summary>
    public static IReadOnlyList<SqlModel> Rates => SqlModels.In("results/rates");

    /// <summary>What came back: callbacks, and replaced parts that failed again.</summary>
    public static IReadOnlyList<SqlModel> Callbacks => SqlModels.In("results/callbacks");

    /// <summary>Counts behind supplier quality.</summary>
    public static IReadOnlyList<SqlModel> Suppliers => SqlModels.In("results/suppliers");

    /// <summary>Ages, failures and watched time behind the age curves.</summary>
    public static IReadOnlyList<SqlModel> Curves => SqlModels.In("results/age_curves");

    /// <summary>Calls and units by build month behind the bad batches.</summary>
    public static IReadOnlyList<SqlModel> BadBatches => SqlModels.In("results/bad_batches");

    /// <summary>Calls by month behind the trends.</summary>
    public static IReadOnlyList<SqlModel> Trends => SqlModels.In("results/trends");
}
