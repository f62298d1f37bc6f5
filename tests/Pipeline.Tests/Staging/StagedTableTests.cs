using CsCheck;
using PartsSignal.Analysis.Sql;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

public sealed class StagedTableTests
{
    [Fact]
    public void WriteGroupAsync_AnyCellsInTwoGroups_ReadBackAsTheyWere() =>
        Gen.Select(Gen.Int[0, 3].Array[0, 700], Gen.Int[0, 3].Array[1, 700]).Sample(
            (first, second) => Assert.Equal([.. first.Concat(second).Select(Shown)], WriteAndRead(first, second)),
            iter: 30);

    [Fact]
    public void WriteGroupAsync_WordsAndTexts_WordsAloneAsADictionary()
    {
        using var folder = new Folder();
        Write(folder, [.. Enumerable.Range(0, 600).Select(i => 1 + (i % 3))], []);
        using Database database = Database.Open();
        Assert.Equal(
            ["day|False", "number|False", "text|False", "word|True"],
            database.Query(
                $"select path_in_schema, bool_or(encodings like '%DICTIONARY%') from parquet_metadata({Database.Literal(folder.File)}) group by all order by 1",
                r => r.GetString(0) + "|" + r.GetBoolean(1)));
    }

    private static string Shown(int n) => n == 0 ? "-|-|-|-" : $"w{n}|t{n}|{n}|2026-08-0{n}";

    private static IReadOnlyList<string> WriteAndRead(int[] first, int[] second)
    {
        using var folder = new Folder();
        Write(folder, first, second);
        using Database database = Database.Open();
        return database.Query(
            $"from read_parquet({Database.Literal(folder.File)}) select coalesce(word, '-') || '|' || coalesce(text, '-') || '|' || coalesce(number::varchar, '-') || '|' || coalesce(day::varchar, '-')",
            r => r.GetString(0));
    }

    private static void Write(Folder folder, params int[][] groups)
    {
        var file = new StagedTableFile("t", folder.Path);
        StagedColumnSpec[] columns = [new("word", ColumnType.Word), new("text", ColumnType.Text), new("number", ColumnType.Int), new("day", ColumnType.Day)];
        var table = new StagedTable(file, columns, null);
        (WordColumn word, TextColumn text, ValueColumn<int> number, ValueColumn<DateOnly> day) = (table.Word("word"), table.Text("text"), table.Value<int>("number"), table.Value<DateOnly>("day"));
        foreach (int[] group in groups)
        {
            foreach (int n in group)
            {
                // A row that was begun and given up leaves nothing behind.
                word.Set(table.At, "given up");
                number.Set(table.At, -1);
                word.Set(table.At, n == 0 ? null : $"w{n}");
                text.Set(table.At, n == 0 ? default : $"t{n}".AsSpan());
                number.Set(table.At, n == 0 ? null : n);
                day.Set(table.At, n == 0 ? null : new DateOnly(2026, 8, n));
                table.EndRow();
            }

            table.WriteGroupAsync(CancellationToken.None).GetAwaiter().GetResult();
        }

        file.CompleteAsync().GetAwaiter().GetResult();
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("partssignal-").FullName;

        public string File => System.IO.Path.Combine(Path, "t.parquet");

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
