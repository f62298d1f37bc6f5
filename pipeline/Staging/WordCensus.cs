using System.Runtime.InteropServices;
using PartsSignal.Pipeline.Cleaning;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Privacy;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Words;

namespace PartsSignal.Pipeline.Staging;

/// <summary>
/// Counts, over the first rows of a file, which words and values different customers have in common, and which languages
/// the texts are in. A word of the customers' own names does not count.
/// </summary>
internal sealed class WordCensus
{
    private const int MostRows = 5_000;
    private const int RowsPerCustomer = 40;
    private const int RarestShape = 50;
    private const int FewestCommon = 20;
    private const int RarestCommon = 100;
    private readonly Dictionary<ulong, Count> _words = [];
    private readonly ValueCounts _values = new(StringComparer.OrdinalIgnoreCase);
    private readonly ValueCounts _shapes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SeenText> _texts = new(StringComparer.Ordinal);
    private readonly HashSet<ulong> _names = [];
    private readonly LanguageVote _languages = new();
    private readonly int[] _textColumns;
    private readonly (string Field, int Column)[] _wordColumns;
    private readonly (string Field, int Column)[] _codeColumns;
    private readonly (string Field, int Column)[] _listColumns;
    private readonly CustomerColumns _customer;
    private readonly int _technicians;
    private readonly HashSet<ulong> _barred = [];
    private int _rows;

    /// <summary>Prepares for a file.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="fields">Its fields.</param>
    /// <param name="initials">True where technicians are kept by initials, so that no text may name them either.</param>
    public WordCensus(string kind, FieldMap fields, bool initials = false)
    {
        _technicians = initials ? fields.Field("technician").Column : -1;
        _customer = new CustomerColumns(fields);
        IReadOnlyList<Field> all = FieldCatalog.Of(kind);
        (string Field, int Column)[] Columns(params Cleaner[] cleaners) =>
        [
            .. all.Where(f => cleaners.Contains(f.Cleaner)).SelectMany(f => new[] { fields.Field(f.Name) }
                .Concat(f.PartLine ? Enumerable.Range(0, fields.PartGroups).Select(g => fields.Field(f.Name, g)) : [])
                .Where(m => m.Column >= 0).Select(m => (f.Name, m.Column))).Distinct(),
        ];
        _textColumns = [.. Columns(Cleaner.Complaint, Cleaner.FreeText, Cleaner.PartDescription).Select(c => c.Column)];
        _wordColumns = Columns(Cleaner.Word, Cleaner.Supplier, Cleaner.Component, Cleaner.ApplianceType);
        _codeColumns = Columns(Cleaner.Code, Cleaner.Model);
        _listColumns = Columns(Cleaner.PartsList);
    }

    /// <summary>True when no more rows are taken.</summary>
    public bool IsFull => _rows >= MostRows;

    /// <summary>Takes the current row of a table.</summary>
    public void Take(TableReader table)
    {
        if (IsFull || table.Fault is not null || table.Row.IsBlank)
        {
            return;
        }

        _rows++;
        RowCells row = table.Row;
        UInt128 customer = _customer.Digest(row) ?? (UInt128)(uint)_rows;
        _customer.AddNames(row, _names);
        if (_technicians >= 0)
        {
            BarTechnician(row[_technicians].ToString());
        }

        foreach (int column in _textColumns)
        {
            if (!row[column].IsWhiteSpace())
            {
                TakeText(row[column], customer);
            }
        }

        foreach ((string field, int column) in _wordColumns)
        {
            ReadOnlySpan<char> cell = row[column].Trim();
            if (!cell.IsEmpty)
            {
                _values.Add(field, cell, customer);
            }
        }

        foreach ((string field, int column) in _codeColumns)
        {
            TakeCode(field, row[column].Trim(), customer);
        }

        foreach ((string field, int column) in _listColumns)
        {
            foreach ((string part, _) in PartsListText.Read(row[column]))
            {
                TakeCode(field, part, customer);
            }
        }
    }

    // Its full words; those that everybody needs stay.
    private void BarTechnician(string name)
    {
        var words = new TextTokens(name);
        for (int i = 0; i < words.Count; i++)
        {
            if (words[i] is { Kind: TokenKind.Word, FoldedLength: > 2 } && !words[i].Is(WordClass.Function | WordClass.Common | WordClass.Own))
            {
                _barred.Add(words[i].Hash);
            }
        }
    }

    private void TakeCode(string field, ReadOnlySpan<char> cell, UInt128 customer)
    {
        if (cell.IsEmpty || CodeScrubber.IsPlain(cell))
        {
            return;
        }

        // The name is a text of the file as well; in some it is the only one that tells the language.
        if (NumberAndNameText.TryRead(cell.ToString(), out string number, out string name))
        {
            cell = number;
            TakeText(name, customer);
        }

        _values.Add(field, cell, customer);
        if (PhoneText.Shape(cell) is { } shape)
        {
            _shapes.Add(field, shape, (UInt128)(uint)_rows);
        }
    }

    /// <summary>What the file's texts may keep.</summary>
    public FileWords Decide(ComplaintWordTable complaints)
    {
        CountTexts();
        int fewest = Math.Clamp(_rows / RowsPerCustomer, 1, FileWords.Customers);
        WordList names = WordList.Get("names");
        return new FileWords(
            _languages.Languages,
            _words.Where(w => w.Value.Is(FileWords.Customers) && !_names.Contains(w.Key) && (w.Value.IsAbbreviation || !names.Contains(w.Key))).Select(w => w.Key),
            _values.Keys(v => v.Is(Math.Max(2, fewest))),
            _shapes.Keys(s => s.Is(Math.Max(2, fewest)) && s.All * RarestShape >= _rows),
            fewest,
            complaints,
            _words.Where(w => w.Value.All >= FewestCommon && w.Value.All * RarestCommon >= _rows).Select(w => w.Key),
            _words.Where(w => w.Value.Is(FileWords.Customers) && w.Value.Small * 2 >= w.Value.All && names.Contains(w.Key)).Select(w => w.Key),
            _barred);
    }

    private void TakeText(ReadOnlySpan<char> text, UInt128 customer)
    {
        // Many rows say the same.
        if (!_texts.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(text, out SeenText? seen))
        {
            string typed = text.ToString();
            seen = new SeenText(Words(new TextTokens(typed)));
            _texts.Add(typed, seen);
        }

        seen.Add(customer);
    }

    // How often each text was seen, taken over to its words.
    private void CountTexts()
    {
        foreach (SeenText text in _texts.Values)
        {
            foreach (SeenWord word in text.Words)
            {
                _languages.Add(word.Hash, text.Rows);
                if (word.Count is { } count)
                {
                    count.All += text.Rows;
                    count.Small += word.IsLowercase ? text.Rows : 0;
                }
            }
        }

        _texts.Clear();
    }

    // A single letter is a word of some languages, but in a shop's texts mostly a code.
    private SeenWord[] Words(TextTokens tokens)
    {
        var words = new List<SeenWord>(tokens.Count);
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i] is { Kind: TokenKind.Word, FoldedLength: > 1 })
            {
                words.Add(new SeenWord(tokens[i].Hash, CountOf(tokens, i), char.IsLower(tokens.Text[tokens[i].Start])));
            }
        }

        return [.. words];
    }

    private Count? CountOf(TextTokens tokens, int i)
    {
        if (tokens[i].Is(WordClass.Function | WordClass.Common))
        {
            return null;
        }

        ref Count? count = ref CollectionsMarshal.GetValueRefOrAddDefault(_words, tokens[i].Hash, out _);
        return count ??= new Count { IsAbbreviation = FileWords.IsAbbreviation(tokens.Folded(i)) };
    }

    // A word of a text; a word that everybody needs is not counted.
    private readonly record struct SeenWord(ulong Hash, Count? Count, bool IsLowercase);

    // A text and the rows that have it.
    private sealed class SeenText(SeenWord[] words)
    {
        private bool _isFull;

        public SeenWord[] Words => words;

        public int Rows { get; private set; }

        public void Add(UInt128 customer)
        {
            Rows++;
            if (_isFull)
            {
                return;
            }

            _isFull = true;
            foreach (SeenWord word in words)
            {
                if (word.Count is { } count)
                {
                    count.Know(customer);
                    _isFull &= count.Is(FileWords.Customers);
                }
            }
        }
    }

    // Values of columns, by field; a value is made a string once.
    private sealed class ValueCounts(StringComparer comparer)
    {
        private readonly Dictionary<string, Dictionary<string, Count>> _fields = new(StringComparer.Ordinal);

        public void Add(string field, ReadOnlySpan<char> value, UInt128 customer)
        {
            ref Dictionary<string, Count>? counts = ref CollectionsMarshal.GetValueRefOrAddDefault(_fields, field, out _);
            counts ??= new Dictionary<string, Count>(comparer);
            Dictionary<string, Count>.AlternateLookup<ReadOnlySpan<char>> byText = counts.GetAlternateLookup<ReadOnlySpan<char>>();
            if (!byText.TryGetValue(value, out Count? count))
            {
                byText[value] = count = new Count();
            }

            count.Add(customer);
        }

        public IEnumerable<string> Keys(Func<Count, bool> enough) =>
            _fields.SelectMany(f => f.Value.Where(v => enough(v.Value)).Select(v => f.Key + '\t' + v.Key));
    }

    // Up to five different customers.
    private sealed class Count
    {
        private readonly UInt128[] _customers = new UInt128[FileWords.Customers];
        private int _known;

        /// <summary>All that were counted, the same again too.</summary>
        public int All { get; set; }

        /// <summary>How many of them begin with a small letter.</summary>
        public int Small { get; set; }

        /// <summary>True for a short word without a vowel.</summary>
        public bool IsAbbreviation { get; init; }

        public void Add(UInt128 customer)
        {
            All++;
            Know(customer);
        }

        public void Know(UInt128 customer)
        {
            if (_known < _customers.Length && !_customers.AsSpan(0, _known).Contains(customer))
            {
                _customers[_known++] = customer;
            }
        }

        public bool Is(int most) => _known >= most;
    }
}
