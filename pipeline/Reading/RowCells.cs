using System.Runtime.CompilerServices;
using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>The cells of the current row in one reused buffer.</summary>
internal sealed class RowCells
{
    private char[] _chars = new char[1024];
    private int _offset;
    private int _used;
    private CellPlace[] _cells = new CellPlace[64];
    private int _first;

    /// <summary>Number of cells.</summary>
    public int Count { get; private set; }

    /// <summary>True when every cell was typed as text: a row of a text file.</summary>
    public bool IsText { get; private set; } = true;

    /// <summary>True for a row of a text file, false for one of a sheet, which has cells up to the sheet's last column.</summary>
    public bool IsOfText { get; internal set; } = true;

    /// <summary>True when the file ends with the row's last character: it may have been cut there.</summary>
    public bool EndsFile { get; internal set; }

    /// <summary>Text of a cell as the file has it; empty beyond the last.</summary>
    public ReadOnlySpan<char> this[int index]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get
        {
            if ((uint)index >= (uint)Count)
            {
                return [];
            }

            CellPlace cell = _cells[_first + index];
            return _chars.AsSpan(_offset + cell.Start, cell.Length);
        }
    }

    /// <summary>Text of every cell.</summary>
    public string[] Texts() => [.. Enumerable.Range(0, Count).Select(i => this[i].ToString())];

    /// <summary>Form of a cell.</summary>
    public CellForm Form(int index) => (uint)index < (uint)Count ? _cells[_first + index].Form : CellForm.Text;

    /// <summary>True when every cell is empty or blank.</summary>
    public bool IsBlank => FilledCount() == 0;

    /// <summary>Characters that the cells are parts of.</summary>
    internal ReadOnlySpan<char> Characters => _chars.AsSpan(_offset, _used);

    /// <summary>Where each cell stands in <see cref="Characters"/>.</summary>
    internal ReadOnlySpan<CellPlace> Places => _cells.AsSpan(_first, Count);

    /// <summary>Shows a row that is kept elsewhere, until the next one is shown. Who shows rows makes none himself: the buffer is not his.</summary>
    internal void Show(char[] characters, int offset, int length, CellPlace[] places, int first, int count, RowOrigin origin) =>
        (_chars, _offset, _used, _cells, _first, Count, Origin) = (characters, offset, length, places, first, count, origin);

    /// <summary>What kind of row it is.</summary>
    internal RowOrigin Origin
    {
        get => new(IsText, IsOfText, EndsFile);
        private set => (IsText, IsOfText, EndsFile) = (value.IsText, value.IsOfText, value.EndsFile);
    }

    /// <summary>Starts a new row.</summary>
    public void Clear() => (Count, _used, IsText, EndsFile) = (0, 0, true, false);

    /// <summary>
    /// Takes the text of a whole row at once, for <see cref="AddPart"/> to name its cells; false where its bytes are not
    /// its characters.
    /// </summary>
    internal bool TryTake(ReadOnlySpan<byte> utf8)
    {
        if (!Ascii.IsValid(utf8))
        {
            return false;
        }

        Reserve(utf8.Length);
        Encoding.ASCII.GetChars(utf8, _chars);
        _used = utf8.Length;
        return true;
    }

    /// <summary>Adds a cell that is a part of the row's text.</summary>
    internal void AddPart(int start, int length) => Add(new CellPlace(start, length, CellForm.Text));

    /// <summary>Adds a cell of UTF-8 bytes.</summary>
    public void Add(ReadOnlySpan<byte> utf8)
    {
        Reserve(utf8.Length);
        int length = Encoding.UTF8.GetChars(utf8, _chars.AsSpan(_used));
        Add(new CellPlace(_used, length, CellForm.Text));
        _used += length;
    }

    /// <summary>Adds a cell of characters.</summary>
    public void Add(ReadOnlySpan<char> text, CellForm form = CellForm.Text)
    {
        Reserve(text.Length);
        text.CopyTo(_chars.AsSpan(_used));
        Add(new CellPlace(_used, text.Length, form));
        _used += text.Length;
        IsText &= form == CellForm.Text;
    }

    /// <summary>Gives a blank cell a text; the row is the reader's own.</summary>
    internal void Fill(int index, ReadOnlySpan<char> text, CellForm form)
    {
        Reserve(text.Length);
        text.CopyTo(_chars.AsSpan(_used));
        _cells[_first + index] = new CellPlace(_used, text.Length, form);
        _used += text.Length;
        IsText &= form == CellForm.Text;
    }

    /// <summary>Number of cells up to the last that is not blank.</summary>
    public int FilledCount()
    {
        int n = Count;
        while (n > 0 && this[n - 1].IsWhiteSpace())
        {
            n--;
        }

        return n;
    }

    private void Add(CellPlace place)
    {
        if (Count == _cells.Length)
        {
            Array.Resize(ref _cells, Count * 2);
        }

        _cells[Count++] = place;
    }

    private void Reserve(int length)
    {
        if (_used + length > _chars.Length)
        {
            Array.Resize(ref _chars, Math.Max(_chars.Length * 2, _used + length));
        }
    }
}

/// <summary>Where a cell stands in the characters of its row, and what it was.</summary>
/// <param name="Start">Its first character.</param>
/// <param name="Length">How many it has.</param>
/// <param name="Form">Its form.</param>
internal readonly record struct CellPlace(int Start, int Length, CellForm Form);

/// <summary>Where a row comes from.</summary>
/// <param name="IsText">True when every cell was typed as text.</param>
/// <param name="IsOfText">True for a row of a text file.</param>
/// <param name="EndsFile">True when the file ends with the row's last character.</param>
internal readonly record struct RowOrigin(bool IsText, bool IsOfText, bool EndsFile);
