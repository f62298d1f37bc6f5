namespace PartsSignal.Pipeline.Understanding;

/// <summary>All that the decision about a shop's tables rests on, without a cell of them.</summary>
/// <param name="Tables">The tables.</param>
internal sealed record ShopEvidence(IReadOnlyList<TableEvidence> Tables)
{
    /// <summary>Gathers it.</summary>
    /// <param name="tables">The tables of a shop.</param>
    /// <param name="lexicon">What headers mean.</param>
    public static ShopEvidence Of(IReadOnlyList<TableSample> tables, HeaderLexicon lexicon)
    {
        var relations = new ShopRelations(tables);
        var places = tables.SelectMany((t, i) => t.Columns.Select((c, j) => (Column: c, Place: (i, j)))).ToDictionary(c => c.Column, c => c.Place);
        var all = new List<TableEvidence>();
        foreach (TableSample table in tables)
        {
            var whole = new FeatureList();
            relations.Add(table, whole);
            var rows = new RowFeatures(table);
            var columns = new List<ColumnEvidence>();
            for (int i = 0; i < table.Columns.Count; i++)
            {
                ColumnSample column = table.Columns[i];
                FeatureList list = ColumnFeatures.Of(table, i, rows, relations);
                columns.Add(new ColumnEvidence(
                    PlainHeader.Key(column.Name),
                    column.Filled > 0,
                    [.. list.Levels, .. HeaderTokens.Levels(column)],
                    HeaderLevels(lexicon, column),
                    ContentFits.Of(column),
                    [.. relations.Shares(column).Select(l => new ColumnLink(places[l.Column].i, places[l.Column].j, (byte)Math.Round(l.Share * 100), relations.PointsTo(column).Any(p => p.Column == l.Column)))],
                    rows.Determined(i))
                {
                    IsPostcodes = Postcodes.Are(column),
                    CountsWorkToo = PieceColumns.CountWorkToo(table, column),
                });
            }

            all.Add(new TableEvidence(NameLevels(table.Sheet is null ? table.File : $"{table.File}/{table.Sheet}"), [.. whole.Levels], columns));
        }

        return new ShopEvidence(all);
    }

    /// <summary>What the name of a file and its sheet says of each kind: weak evidence, since names say little and may be wrong.</summary>
    public static byte[] NameLevels(string name)
    {
        string[] parts = [.. name.Split('/').Select(Path.GetFileNameWithoutExtension).OfType<string>()];
        double[][] said = [.. parts.Select(HeaderLexicon.Kinds.Match)];
        return [.. KindModels.Names.Select(k => ((IList<string>)HeaderLexicon.Kinds.Fields).IndexOf(k)).Select(at => FeatureList.LevelOf(said.Max(s => s[at])))];
    }

    /// <summary>What a header says of each of the lexicon's fields.</summary>
    public static byte[] HeaderLevels(HeaderLexicon lexicon, ColumnSample column)
    {
        string header = column.Repeats > 1 && HeaderText.Numbered(column.Name) is { } numbered ? numbered.Stem : column.Name;
        return [.. lexicon.Match(header).Select(FeatureList.LevelOf)];
    }
}

/// <summary>Evidence of a table.</summary>
/// <param name="NameLevels">What its name says of each kind; 0 to 15 each.</param>
/// <param name="Levels">What holds for the whole table.</param>
/// <param name="Columns">Its columns.</param>
internal sealed record TableEvidence(byte[] NameLevels, byte[] Levels, IReadOnlyList<ColumnEvidence> Columns)
{
    /// <summary>True for tables of the same columns: years of one log.</summary>
    public bool IsTwin(TableEvidence other) =>
        Columns.Count >= 2 && Columns.Count(c => other.Columns.Any(o => o.Header == c.Header)) * 10 >= 7 * Math.Max(Columns.Count, other.Columns.Count);
}

/// <summary>Evidence of a column.</summary>
/// <param name="Header">Its header, as headers are compared.</param>
/// <param name="IsFilled">Whether it holds anything.</param>
/// <param name="Levels">Its cells, its rows, its relations, and last the general words of its header; 0 to 15 each.</param>
/// <param name="HeaderLevels">What its header says of each of the lexicon's fields; 0 to 15 each.</param>
/// <param name="Fits">How many of its cells are what a class of fields holds; 0 to 15 each.</param>
/// <param name="Links">Columns of other tables that hold half or more of its values.</param>
/// <param name="Determines">How well it tells each column of its table, by their places: 0 not known, 1 not at all, 15 wholly.</param>
internal sealed record ColumnEvidence(string Header, bool IsFilled, byte[] Levels, byte[] HeaderLevels, byte[] Fits, IReadOnlyList<ColumnLink> Links, byte[] Determines)
{
    /// <summary>Whether its cells are written as postcodes.</summary>
    public bool IsPostcodes { get; init; }

    /// <summary>Whether it counts pieces, and hours only in rows that charge for work.</summary>
    public bool CountsWorkToo { get; init; }
}

/// <summary>A column of another table that holds a column's values.</summary>
/// <param name="Table">The other table, by its place.</param>
/// <param name="Column">Its column, by its place.</param>
/// <param name="Percent">Share of the values.</param>
/// <param name="IsKey">Whether that column names the rows of its table.</param>
internal readonly record struct ColumnLink(int Table, int Column, byte Percent, bool IsKey);
