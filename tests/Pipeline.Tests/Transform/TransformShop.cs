using PartsSignal.Analysis.CrossReference;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Transform;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Tests.Transform;

/// <summary>A shop of a few staged rows, combined in memory.</summary>
internal sealed class TransformShop : IDisposable
{
    private readonly Dictionary<int, (string Kind, int Rows)> _files = [];
    private readonly Dictionary<int, int> _lines = [];
    private readonly HashSet<int> _onePartPerRow = [];

    /// <summary>Opens the session.</summary>
    /// <param name="holdsLittle">As a small load has it, or as a large one.</param>
    public TransformShop(bool holdsLittle = true)
    {
        Database = Database.Open(new DatabaseOptions { Threads = 1, HoldsLittle = holdsLittle });
        StagedViews.Attach(Database, []);
        Database.Run("staging/review_answers.sql");
        ResultTable.Write(Database, "component_roles", [new ComponentRole("inlet_valve", "main"), new ComponentRole("fill_hose", "accessory")]);
        Database.Execute("insert into complaint_kinds values ('no_fill'), ('noise')");
    }

    public Database Database { get; }

    public TransformShop Add(params StagedJob[] rows) => Put("jobs", rows, true);

    public TransformShop Add(params StagedOrder[] rows) => Put("part_orders", rows, true);

    public TransformShop Add(params StagedPart[] rows) => Put("parts", rows, true);

    public TransformShop Add(params StagedArrow[] rows) => Put("supersessions", rows, true);

    public TransformShop Add(params StagedAlias[] rows) => Put("part_aliases", rows, true);

    public TransformShop Add(params StagedModel[] rows) => Put("models", rows, true);

    public TransformShop Add(params StagedUnit[] rows) => Put("units", rows, true);

    public TransformShop Add(params StagedFitment[] rows) => Put("fitments", rows, true);

    public TransformShop Add(params StagedCount[] rows) => Put("van_counts", rows, true);

    public TransformShop Add(params StagedJobPart[] rows) => Put("job_parts", rows, !rows[0].WithJobRow);

    public TransformShop OnePartPerRow(int sourceOrder)
    {
        _onePartPerRow.Add(sourceOrder);
        return this;
    }

    public TransformShop Combine(TransformOptions? options = null)
    {
        ResultTable.Write(Database, "source_files", _files.OrderBy(f => f.Key).Select(f =>
            new File(f.Key, $"file-{f.Key}.csv", "hash", f.Value.Kind, f.Value.Rows, 0, _onePartPerRow.Contains(f.Key))));
        PartNames.Attach(Database, WordSets.Load(null).Components.For(["en"]));
        OwnComplaints.Attach(Database);
        ResultTable.Write(Database, "learned_date_codes", Array.Empty<DateCodeRule>());
        TransformRunner.Run(Database, options ?? new TransformOptions(), TimeProvider.System);
        Reconciliation.Read(Database).RequireBalance();
        return this;
    }

    public IReadOnlyList<string> Rows(string query) => Database.Query(query, r => string.Join('|', Enumerable.Range(0, r.FieldCount).Select(i =>
        r.IsDBNull(i) ? "-" : r.GetValue(i) switch
        {
            DateOnly day => day.ToString("yyyy-MM-dd"),
            DateTime day => day.ToString("yyyy-MM-dd"),
            bool flag => flag ? "yes" : "no",
            IFormattable f => f.ToString(null, System.Globalization.CultureInfo.InvariantCulture),
            var text => text.ToString(),
        })));

    public void Dispose() => Database.Dispose();

    private TransformShop Put<T>(string kind, T[] rows, bool countsAsRows)
        where T : StagedRow
    {
        ResultTable.Write(Database, "incoming", rows.Select(r => r with
        {
            RowHash = r.RowHash ?? (r with { SourceOrder = 0, SourceLine = 0 }).ToString(),
            SourceLine = r.SourceLine > 0 ? r.SourceLine : NextLine(r.SourceOrder),
        }));
        Database.Execute($"insert into staged_{kind} by name from incoming");
        foreach (T row in rows.Where(_ => countsAsRows))
        {
            _files[row.SourceOrder] = (kind, _files.GetValueOrDefault(row.SourceOrder).Rows + 1);
        }

        return this;
    }

    private int NextLine(int sourceOrder) => _lines[sourceOrder] = _lines.GetValueOrDefault(sourceOrder, 1) + 1;

    private sealed record File(int SourceOrder, string SourceFile, string ContentHash, string Kind, long RowsRead, long Rejected, bool OnePartPerRow);
}
