using System.Text;

namespace PartsSignal.Pipeline.Reading;

/// <summary>The cells of the current row in one reused buffer.</summary>
public sealed class RowCells
{
    private char[] _chars = new char[1024];
    private int[] _ends = new int[64];
    private CellForm[] _forms = new CellForm[64];

    /// <summary>Number of cells.</summary>
    public int Count { get; private set; }

    /// <summary>Text of a cell as the file has it; empty beyond the last.</summary>
    public ReadOnlySpan<char> this[int index]
    {
        get
        {
            if ((uint)index >= (uint)Count)
            {
                return [];
            }

            int start = index == 0 ? 0 : _ends[index - 1];
            return _chars.AsSpan(start, _ends[index] - start);
        }
    }

    /// <summary>Text of every cell.</summary>
    public string[] Texts() => [.. Enumerable.Range(0, Count).Select(i => this[i].ToString())];

    /// <summary>Form of a cell.</summary>
    public CellForm Form(int index) => (uint)index < (uint)Count ? _forms[index] : CellForm.Text;

    /// <summary>True when every cell is empty or blank.</summary>
    public bool IsBlank => Count == 0 || _chars.AsSpan(0, _ends[Count - 1]).IsWhiteSpace();

    /// <summary>Characters of all cells, one cell after the other.</summary>
    internal ReadOnlySpan<char> Characters => Count == 0 ? [] : _chars.AsSpan(0, _ends[Count - 1]);

    /// <summary>Where each cell ends in <see cref="Characters"/>.</summary>
    internal ReadOnlySpan<int> Ends => _ends.AsSpan(0, Count);

    /// <summary>Form of each cell.</summary>
    internal ReadOnlySpan<CellForm> Forms => _forms.AsSpan(0, Count);

    /// <summary>Takes over a row that was kept.</summary>
    internal void Set(ReadOnlySpan<char> characters, ReadOnlySpan<int> ends, ReadOnlySpan<CellForm> forms)
    {
        _chars = _chars.Length < characters.Length ? new char[characters.Length * 2] : _chars;
        if (_ends.Length < ends.Length)
        {
            (_ends, _forms) = (new int[ends.Length * 2], new CellForm[ends.Length * 2]);
        }

        characters.CopyTo(_chars);
        ends.CopyTo(_ends);
        forms.CopyTo(_forms);
        Count = ends.Length;
    }

    /// <summary>Starts a new row.</summary>
    public void Clear() => Count = 0;

    /// <summary>Adds a cell of UTF-8 bytes.</summary>
    public void Add(ReadOnlySpan<byte> utf8)
    {
        int start = Room(utf8.Length);
        _ends[Count - 1] = start + Encoding.UTF8.GetChars(utf8, _chars.AsSpan(start));
        _forms[Count - 1] = CellForm.Text;
    }

    /// <summary>Adds a cell of characters.</summary>
    public void Add(ReadOnlySpan<char> text, CellForm form = CellForm.Text)
    {
        int start = Room(text.Length);
        text.CopyTo(_chars.AsSpan(start));
        _ends[Count - 1] = start + text.Length;
        _forms[Count - 1] = form;
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

    private int Room(int length)
    {
        int start = Count == 0 ? 0 : _ends[Count - 1];
        if (start + length > _chars.Length)
        {
            Array.Resize(ref _chars, Math.Max(_chars.Length * 2, start + length));
        }

        if (Count == _ends.Length)
        {
            Array.Resize(ref _ends, Count * 2);
            Array.Resize(ref _forms, Count * 2);
        }

        Count++;
        return start;
    }
}
