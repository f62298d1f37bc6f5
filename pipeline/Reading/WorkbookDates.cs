using System.Globalization;
using System.IO.Compression;
using System.Xml;

namespace PartsSignal.Pipeline.Reading;

/// <summary>
/// Days that stand in a sheet as plain numbers, because the cells lost their format. A workbook counts them from 1900 or
/// from 1904.
/// </summary>
internal static class WorkbookDates
{
    // 1 January 1954 to the end of 2099: other numbers are no days of a shop.
    private const double Least = 19_725;
    private const double Most = 73_050;
    private const double From1904 = 1_462;
    private static readonly XmlReaderSettings Safe = new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreWhitespace = true };

    /// <summary>What is added to a number before it counts from 1900: 0 or 1,462.</summary>
    /// <param name="workbook">The workbook; left open, at the place it had.</param>
    public static double FirstDay(Stream workbook)
    {
        long at = workbook.Position;
        workbook.Position = 0;
        try
        {
            return workbook.ReadByte() == 'P' ? FromXml(workbook) : OldWorkbookErrors.CountsFrom1904(Bytes(workbook)) ? From1904 : 0;
        }
        finally
        {
            workbook.Position = at;
        }
    }

    /// <summary>The day that a number counts, as ISO text, with the time where it has one; null: no day of a shop.</summary>
    public static string? Day(double number, double firstDay)
    {
        double days = number + firstDay;
        if (days is < Least or > Most)
        {
            return null;
        }

        var time = DateTime.FromOADate(Math.Round(days * 86_400) / 86_400);
        return Text(time);
    }

    /// <summary>A day as ISO text, with the time where it has one.</summary>
    public static string Text(DateTime time) => time.ToString(time.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    private static double FromXml(Stream workbook)
    {
        workbook.Position = 0;
        using var zip = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true);
        if (zip.GetEntry("xl/workbook.xml") is not { } part)
        {
            return 0;
        }

        using Stream stream = part.Open();
        using var xml = XmlReader.Create(stream, Safe);
        while (xml.Read())
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "workbookPr")
            {
                return xml.GetAttribute("date1904") is "1" or "true" ? From1904 : 0;
            }
        }

        return 0;
    }

    private static byte[] Bytes(Stream workbook)
    {
        var bytes = new byte[workbook.Length];
        workbook.Position = 0;
        workbook.ReadExactly(bytes);
        return bytes;
    }
}
