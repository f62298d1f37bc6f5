using System.Text;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Cleans rows one at a time: stages the good ones and says what is wrong with the others.</summary>
/// <param name="stager">Takes the good rows.</param>
/// <param name="row">Shows the current row.</param>
/// <param name="width">Columns of the header.</param>
internal sealed class RowCleaner(TableStager stager, MappedRow row, int width)
{
    /// <summary>Takes the good rows.</summary>
    public TableStager Stager => stager;

    /// <summary>Cells of the current row.</summary>
    public RowCells Cells => row.Cells;

    /// <summary>Cells that could not be read and count as unknown.</summary>
    public IReadOnlyList<UnreadCells> Unread => row.Unread.ByField;

    /// <summary>Stages the current row.</summary>
    /// <param name="line">Its line.</param>
    /// <param name="cut">Why it could not be cut into cells, or null if it could.</param>
    /// <returns>Why it is refused, or null if it is staged.</returns>
    public RowFault? Stage(int line, RowFault? cut)
    {
        if ((cut ?? Shape()) is { } fault)
        {
            return fault;
        }

        if (FooterRule.IsSummary(row.Cells, width))
        {
            return new RowFault(null, ReasonCode.SummaryRow, "The row is a total of others.", "Leave the row out.");
        }

        row.Begin(line);
        stager.Stage(row);
        return row.Fault;
    }

    /// <summary>The current row as a refused one.</summary>
    /// <param name="line">Its line.</param>
    /// <param name="cut">Why it could not be cut into cells, or null if it could.</param>
    /// <param name="fault">Why it is refused.</param>
    /// <param name="raw">Its text in the file, or the start of it; empty: it was never text, and is its cells with tabs between.</param>
    public RejectedRow Refused(int line, RowFault? cut, RowFault fault, ReadOnlySpan<byte> raw)
    {
        RowCells cells = row.Cells;
        bool footer = cut is null && (fault.Code == ReasonCode.SummaryRow || FooterRule.IsFreeLine(cells, width) || FooterRule.IsShortLine(cells, width));
        return new RejectedRow(line, fault, cut is null ? cells.Texts() : [], RawText(cells, raw), footer);
    }

    /// <summary>A row as the file has it.</summary>
    /// <param name="cells">Its cells.</param>
    /// <param name="raw">Its text in the file, or the start of it; empty: it was never text, and is its cells with tabs between.</param>
    public static string RawText(RowCells cells, ReadOnlySpan<byte> raw) => raw.IsEmpty
        ? string.Join('\t', Enumerable.Range(0, cells.FilledCount()).Select(i => cells[i].ToString()))
        : Encoding.UTF8.GetString(raw);

    private RowFault? Shape()
    {
        RowCells cells = row.Cells;
        return cells.Count < width
            ? new RowFault(null, ReasonCode.TooFewCells, $"The row has {cells.Count} cells; the header has {width}.", "Add the missing cells, empty ones too.")
            : cells.Count > width && cells.FilledCount() > width
                ? new RowFault(null, ReasonCode.TooManyCells, $"The row has {cells.Count} cells; the header has {width}.", "Put text that contains the separator in quotation marks.")
                : null;
    }
}

/// <summary>Successive rows of a file whose good ones are staged.</summary>
/// <param name="Count">How many they were.</param>
/// <param name="Refused">The others, with their places among them, in order.</param>
internal sealed record CleanedRows(int Count, IReadOnlyList<(int At, RejectedRow Row)> Refused);
