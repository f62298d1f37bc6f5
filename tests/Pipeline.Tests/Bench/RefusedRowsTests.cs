using PartsSignal.Pipeline.Bench;

namespace PartsSignal.Pipeline.Tests.Bench;

public sealed class RefusedRowsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("partssignal-rows-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Read_RowsThatReadTheSame_EachIsSettledByItself()
    {
        string path = Path.Combine(_folder, "list.csv.rejects.csv");
        File.WriteAllText(path, "Part,Price,reject_line,reject_field,reject_reason,reject_message,reject_suggestion,reject_raw\nA2,cheap,3,price,bad_number,,,\"A2,cheap\"\nA3,dear,4,price,bad_number,,,\"A3,dear\"\nA2,cheap,5,price,bad_number,,,\"A2,cheap\"\n");
        string[] keys = [.. RefusedRows.Read(path).Rows.Select(r => r.Key)];
        Assert.Equal(3, keys.Distinct(StringComparer.Ordinal).Count());

        // Rows that were settled before are known still.
        Assert.Equal("564a9ac8a1d7", keys[0][..12]);
        Assert.Equal(keys, RefusedRows.Read(path).Rows.Select(r => r.Key));
    }
}
