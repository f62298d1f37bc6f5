namespace PartsSignal.Pipeline.Reading;

/// <summary>What a workbook says a cell is; everything in a text file is text.</summary>
internal enum CellForm : byte
{
    /// <summary>Typed as text.</summary>
    Text,

    /// <summary>A number, written out without loss.</summary>
    Number,

    /// <summary>A number too long or too round to trust as a code: a spreadsheet has had it.</summary>
    DamagedNumber,

    /// <summary>A day or time, written as ISO text.</summary>
    Date,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>A formula that failed, for example #N/A.</summary>
    Error,
}
