using System.Globalization;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using PartsSignal.Pipeline.Staging.Tables;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>How many clean the rows of a file at a time changes nothing in what is written.</summary>
public sealed class WorkersTests
{
    private const int Rows = 40_000;

    private static readonly ShopSettings Settings = new()
    {
        Sources =
        [
            new SourceMap
            {
                Files = "log.csv",
                Kind = "jobs",
                Columns = new Dictionary<string, IReadOnlyList<string>>
                {
                    ["job_id"] = ["Job"], ["opened_on"] = ["Day"], ["complaint"] = ["Text"], ["phone"] = ["Phone"], ["visits"] = ["Visits"], ["parts_list"] = ["Parts"],
                },
            },
        ],
    };

    [Fact]
    public async Task StageAsync_OneTwoAndThreeWorkers_SameBytesRejectsAndCounts()
    {
        using var rig = new StagingRig();
        rig.Write("log.csv", Log());
        var all = new List<(StagedFile File, byte[][] Bytes, string Raw)>();
        foreach (int workers in new[] { 1, 2, 3 })
        {
            var output = new OutputFolder(Path.Combine(rig.Output.Root, workers.ToString(CultureInfo.InvariantCulture)));
            var stager = new Stager(output, Settings, StagingRig.Tools, TableStagers.Make);
            StagedFile file = await stager.StageAsync(SourceFile.Find(rig.Input, Settings).Single(), workers, CancellationToken.None);
            string[] paths = [.. file.Tables.OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => t.Value), file.Rejects!];
            all.Add((file, [.. paths.Select(File.ReadAllBytes)], await File.ReadAllTextAsync(file.RawRejects!, TestContext.Current.CancellationToken)));
        }

        // Row 20,001 and each 5,000th have no day; the last two lines are no rows; each 9,000th visit count is no number.
        Assert.Equal((Rows, 9, 2), (all[0].File.RowsRead, all[0].File.Rejected, all[0].File.Footers));
        Assert.Equal(5, all[0].File.UnreadCells.Single().Cells);
        Assert.Equal(2, all[0].File.UnreadCells.Single().FirstLine);
        Assert.All(all, one =>
        {
            Assert.Equal(all[0].Bytes, one.Bytes);
            Assert.Equal(all[0].Raw, one.Raw);
            Assert.Equal(all[0].File.UnreadCells, one.File.UnreadCells);
            Assert.Equal((all[0].File.RowsRead, all[0].File.Rejected, all[0].File.Footers), (one.File.RowsRead, one.File.Rejected, one.File.Footers));
        });
    }

    private static string Log()
    {
        var text = new StringBuilder("Job,Day,Text,Phone,Visits,Parts\n");
        for (int i = 0; i < Rows; i++)
        {
            string day = i == 20_000 || i % 5_000 == 4_999 ? "" : "2025-03-" + ((i % 28) + 1).ToString("00", CultureInfo.InvariantCulture);
            string visits = i % 9_000 == 0 ? "few" : "1";
            text.Append(CultureInfo.InvariantCulture, $"J{i},{day},no water {i % 700},07700 {i:000000},{visits},A{i % 90} + B{i % 7}\n");
        }

        return text.Append("end of list,,,,,\nTotal,40000,,,,\n").ToString();
    }
}
