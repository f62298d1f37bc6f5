using System.Text;
using PartsSignal.Pipeline.Core;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Rejects;

namespace PartsSignal.Pipeline.Staging;

/// <summary>Cleans rows one at a time: stages the good ones and says what is wrong with the others.</summary>
/// <param name="stager">Takes the good rows.</param>
/// <param name="row">Shows the current row.</param>
/// <param name="header">The header.</param>
/// <param name="habits">What the file's first rows show of all of them.</param>
internal sealed class RowCleaner(TableStager stager, MappedRow row, IReadOnlyList<string> header, RowHabits habits)
{
    private static readonly RowFault Total = new(null, ReasonCode.SummaryRow, "The row is a total of others.", "Leave the row out.");

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
        if (cut is not null)
        {
            return cut;
        }

        if (FooterRule.IsHeader(row.Cells, header))
        {
            return new RowFault(null, ReasonCode.NotData, "The line repeats the header.", null);
        }

        if (FooterRule.IsTotal(row.Cells, header.Count, habits))
        {
            return Total;
        }

        RowFault? fault = habits.Fault(row.Cells);
        if (fault is null)
        {
            row.Begin(line);
            fault = habits.Moved(row);
            if (fault is null)
            {
                stager.Stage(row);
                fault = row.Fault;
            }
        }

        return fault is not null && FooterRule.BeginsWithTotal(row.Cells, header.Count) ? Total : fault;
    }

    /// <summary>The current row as a refused one.</summary>
    /// <param name="line">Its line.</param>
    /// <param name="cut">Why it could not be cut into cells, or null if it could.</param>
    /// <param name="fault">Why it is refused.</param>
    /// <param name="raw">Its text in the file, or the start of it; empty: it was never text, and is its cells with tabs between.</param>
    public RejectedRow Refused(int line, RowFault? cut, RowFault fault, ReadOnlySpan<byte> raw)
    {
        RowCells cells = row.Cells;
        bool footer = cut is null && fault.Code != ReasonCode.NotData && (fault.Code == ReasonCode.SummaryRow || FooterRule.IsNote(cells, header.Count, habits));
        return new RejectedRow(line, fault, cut is null ? cells.Texts() : [], RawText(cells, raw), footer);
    }

    /// <summary>A row as the file has it.</summary>
    /// <param name="cells">Its cells.</param>
    /// <param name="raw">Its text in the file, or the start of it; empty: it was never text, and is its cells with tabs between.</param>
    public static string RawText(RowCells cells, ReadOnlySpan<byte> raw) => raw.IsEmpty
        ? string.Join('\t', Enumerable.Range(0, cells.FilledCount()).Select(i => cells[i].ToString()))
        : Encoding.UTF8.GetString(raw);
}

/// <summary>Successive rows of a file whose good ones are staged.</summary>
/// <param name="Count">How many they were.</param>
/// <param name="Refused">The others, with their places among them, in order.</param>
internal sealed record CleanedRows(int Count, IReadOnlyList<(int At, RejectedRow Row)> Refused);
