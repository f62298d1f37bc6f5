using System.IO.Compression;
using System.Text;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;
using static PartsSignal.Pipeline.Tests.Reading.WorkbookMaker;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Workbooks in forms that offices rarely choose and often get.</summary>
public sealed class WorkbookFormTests
{
    private static readonly string[] Header = [Text("Order"), Text("Ordered"), Text("Part"), Text("Cost")];

    [Theory]
    [InlineData("46237", false)]
    [InlineData("44775", true)]
    public async Task StageAsync_DayNumbersWithoutFormat_AreDays(string number, bool from1904)
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, "orders.xlsx", Make([Header, [Text("1"), Number(number), Text("A"), Number("46237")]], dates1904: from1904));
        Assert.Equal(["2026-08-03|46237.00"], StagingRig.Rows(file, "staged_part_orders", "ordered_on, unit_cost"));
    }

    [Fact]
    public async Task StageAsync_NumbersThatAreNoDays_AreRefused()
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, "orders.xlsx", Make([Header, [Text("1"), Number("12"), Text("A"), ""], [Text("2"), Number("990000"), Text("A"), ""]]));
        Assert.Equal(["2|ordered_on|bad_date", "3|ordered_on|bad_date"], StagingRig.Rejects(file));
    }

    [Fact]
    public async Task StageAsync_StrictForm_ReadsAsTheUsualOne()
    {
        string[][] rows = [Header, [Text("1"), Number("46237", 1), Text("00860001"), Number("4.5")], [Text("2"), "t=\"d\" s=\"1\"><v>2026-08-04</v>", Text("B"), Error("#N/A")]];
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, "orders.xlsx", Strict(Make(rows)));
        Assert.Equal(["1|2026-08-03|00860001|4.50"], StagingRig.Rows(file, "staged_part_orders", "order_id, ordered_on, part_raw, unit_cost"));
        Assert.Equal(["3|unit_cost|formula_error"], StagingRig.Rejects(file));
    }

    [Theory]
    [InlineData("orders.xlsb", "xl/workbook.bin", "a binary workbook (.xlsb)")]
    [InlineData("orders.ods", "content.xml", "an OpenDocument spreadsheet (.ods)")]
    public async Task StageAsync_FormThatIsNotRead_IsRefusedByName(string name, string part, string form)
    {
        using var rig = new StagingRig();
        StagedFile file = await StageAsync(rig, name, Zip(part));
        Assert.Equal($"The file is {form}, a form that is not read.", file.Refused!.Message);
        Assert.Contains("save it as .xlsx", file.Refused.Suggestion, StringComparison.Ordinal);
    }

    private static byte[] Zip(string part)
    {
        var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using Stream stream = zip.CreateEntry(part).Open();
            stream.WriteByte(0);
        }

        return bytes.ToArray();
    }

    private static async Task<StagedFile> StageAsync(StagingRig rig, string name, byte[] workbook)
    {
        rig.Write(name, workbook);
        var map = new SourceMap
        {
            Files = name,
            Kind = "part_orders",
            Columns = new Dictionary<string, IReadOnlyList<string>> { ["order_id"] = ["Order"], ["ordered_on"] = ["Ordered"], ["part"] = ["Part"], ["unit_cost"] = ["Cost"] },
        };
        return (await rig.StageAllAsync(new ShopSettings { Sources = [map] })).Single();
    }

    // What "Strict Open XML Spreadsheet" writes: the same parts under other names.
    private static byte[] Strict(byte[] workbook)
    {
        var strict = new MemoryStream();
        using (var from = new ZipArchive(new MemoryStream(workbook)))
        using (var to = new ZipArchive(strict, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry part in from.Entries)
            {
                using var reader = new StreamReader(part.Open());
                string xml = reader.ReadToEnd()
                    .Replace("http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://purl.oclc.org/ooxml/spreadsheetml/main", StringComparison.Ordinal)
                    .Replace("http://schemas.openxmlformats.org/officeDocument/2006/relationships", "http://purl.oclc.org/ooxml/officeDocument/relationships", StringComparison.Ordinal);
                using var writer = new StreamWriter(to.CreateEntry(part.FullName).Open(), new UTF8Encoding(false));
                writer.Write(xml);
            }
        }

        return strict.ToArray();
    }
}
