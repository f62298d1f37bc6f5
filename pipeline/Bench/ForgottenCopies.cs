using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;

namespace PartsSignal.Pipeline.Bench;

/// <summary>
/// Removes the bench's copies of older files that name a forgotten customer: once the owner has taken the customer out of
/// the shop's files, no earlier update and no file set aside brings the customer back. Files in use are the owner's to change.
/// </summary>
/// <param name="shop">The shop.</param>
/// <param name="history">Its earlier updates.</param>
internal sealed class ForgottenCopies(ShopFolder shop, ShopHistory history)
{
    /// <summary>Looks through the copies and deletes those that name a forgotten customer, or that cannot be looked through.</summary>
    public void Drop(CancellationToken cancellation)
    {
        var forgotten = ForgottenCustomers.Load(shop.Output.Forgotten, IdentityKey.LoadOrMake(shop.Output.Key));
        if (forgotten.IsEmpty)
        {
            return;
        }

        ReadingLimits limits = ShopFile.Load(shop.Files).Limits;
        history.Drop((name, path) => Names(new InputFile(name, path, null), forgotten, limits, cancellation));
        foreach (string file in Directory.Exists(shop.Removed) ? Directory.EnumerateFiles(shop.Removed, "*", SearchOption.AllDirectories).ToList() : [])
        {
            if (Names(new InputFile(Path.GetFileName(file), file, null), forgotten, limits, cancellation))
            {
                File.Delete(file);
            }
        }
    }

    private static bool Names(InputFile file, ForgottenCustomers forgotten, ReadingLimits limits, CancellationToken cancellation)
    {
        if (file.Name == ShopFile.Name)
        {
            return false;
        }

        try
        {
            var scan = ContentScan.Read(file, limits, cancellation);
            Workbook? workbook = file.IsWorkbook ? Workbooks.Read(file, scan, limits) : null;
            string?[] sheets = workbook is null ? [null] : [.. workbook.Sheets()];
            return Array.Exists(sheets, s => Names(file, scan, workbook, s, forgotten, limits, cancellation));
        }
        catch (FileRefusedException refused)
        {
            return refused.Fault.Code != ReasonCode.EmptyFile;
        }
    }

    private static bool Names(InputFile file, ContentScan scan, Workbook? workbook, string? sheet, ForgottenCustomers forgotten, ReadingLimits limits, CancellationToken cancellation)
    {
        using OpenedTable table = OpenedTable.Open(file, scan, new SourceMap { Files = file.Name, Kind = "jobs", Sheet = sheet }, limits, workbook);
        var cells = new List<string>(table.Header);
        do
        {
            cancellation.ThrowIfCancellationRequested();
            if (forgotten.IsIn(cells, ""))
            {
                return true;
            }

            cells.Clear();
            if (!table.Reader.Read())
            {
                return false;
            }

            for (int i = 0; i < table.Reader.Row.Count; i++)
            {
                cells.Add(table.Reader.Row[i].ToString());
            }
        }
        while (true);
    }
}
