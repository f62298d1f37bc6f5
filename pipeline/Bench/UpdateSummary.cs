using System.Text.Json.Nodes;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.FullRun;

namespace PartsSignal.Pipeline.Bench;

/// <summary>Says what an update did.</summary>
internal static class UpdateSummary
{
    private const int MostNamed = 4;

    /// <summary>A sentence for each thing an owner looks for.</summary>
    public static IReadOnlyList<string> Of(ShopFolder shop, UpdateReason reason, ShopRunResult result, CancellationToken cancellation)
    {
        HashSet<string> read = result.Load.Files.Select(f => f.Rows.File).ToHashSet(StringComparer.Ordinal);
        long jobs = result.Load.Steps.LastOrDefault(s => s.Table == "jobs")?.Rows ?? 0, refused = result.Load.Total.Rows.Rejected;
        IReadOnlyList<UnreadFile> unread = UnreadFile.Of(shop, read, File.GetLastWriteTimeUtc(shop.Output.RunRecord), cancellation);
        int vans = VanList.Vans(shop.Output.Results).Count;
        using var update = LastUpdate.Open(shop);
        string?[] said =
        [
            reason.Forgets is { } customer ? Forgotten(customer.JobRows, customer.Rows - customer.JobRows) : null,
            $"{Counted.Of(read.Count, "file")} read with {Counted.Of(result.Load.Total.Rows.Read, "row")}: {Counted.Of(jobs, "job")}.{(refused == 0 ? "" : $" {Counted.Of(refused, "row")} refused.")}",
            unread.Count == 0 ? null : $"{Counted.Of(unread.Count, "file")} not read: {PageText.FirstOf([.. unread.Select(f => f.Name)], MostNamed)}. Rows says why.",
            Month(shop) is { } month ? $"Report of {PageText.Month(month)} made." : null,
            MonthsView.Of(shop, update.LastDay).NewestIsMissing,
            vans == 0 ? VanList.WhyNone(shop.Output.Results) : $"{Counted.Of(vans, "van list")} made.",
            update.Currency.Length == 0 ? "Amounts are shown without a currency. You can set it under Settings." : null,
        ];
        return [.. said.OfType<string>()];
    }

    private static string Forgotten(long jobRows, long otherRows) =>
        $"The customer was forgotten in {Counted.Of(jobRows, "job")}{(otherRows == 0 ? "" : $" and {Counted.Of(otherRows, "row")} of other files")}. The jobs stay, without the customer.";

    private static string? Month(ShopFolder shop) =>
        (string?)JsonNode.Parse(File.ReadAllText(shop.Output.RunRecord))?["report"] is { } page ? Path.GetFileName(Path.GetDirectoryName(page)) : null;
}
