using System.Buffers.Binary;
using Microsoft.ML;
using PartsSignal.Analysis.Prediction.OddsPipeline;

namespace PartsSignal.Analysis.Tests.Prediction.OddsPipeline;

public sealed class BlockOrderTests
{
    private const int Rows = 40_000;

    [Fact]
    public void Ordered_ManyBlocks_GivesOneFileOfTheSameRowsHoweverTheyWereWritten()
    {
        byte[] first = Saved(), ordered = BlockOrder.Ordered(first);
        for (int i = 0; i < 8; i++)
        {
            Assert.Equal(ordered, BlockOrder.Ordered(Saved()));
        }

        var context = new MLContext();
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, ordered);
            Assert.Equal(Source(), context.Data.CreateEnumerable<Entry>(context.Data.LoadFromBinary(file), reuseRowObject: false).Select(e => (e.Key, e.Value)));
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Ordered_TwoBlocksInTheOtherOrder_PutsThemBack()
    {
        byte[] ordered = BlockOrder.Ordered(Saved());
        Assert.Equal(ordered, BlockOrder.Ordered(Swapped(ordered)));
    }

    // The first two blocks, one of each column, in the other order, and their lookup entries with them.
    private static byte[] Swapped(byte[] file)
    {
        int table = (int)BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(24));
        int entriesOfColumn = 16 * ((table - FirstLookup(file)) / 16 / 2), first = FirstLookup(file), second = first + entriesOfColumn;
        int lengthOne = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(first + 8)), lengthTwo = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(second + 8));
        byte[] swapped = [.. file];
        file.AsSpan(256 + lengthOne, lengthTwo).CopyTo(swapped.AsSpan(256));
        file.AsSpan(256, lengthOne).CopyTo(swapped.AsSpan(256 + lengthTwo));
        BinaryPrimitives.WriteInt64LittleEndian(swapped.AsSpan(first), 256 + lengthTwo);
        BinaryPrimitives.WriteInt64LittleEndian(swapped.AsSpan(second), 256);
        Assert.NotEqual(file, swapped);
        return swapped;
    }

    // The lookup tables start with the entry that points at the first block, right behind the header.
    private static int FirstLookup(byte[] file)
    {
        int at = (int)BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(24)) - 16;
        while (BinaryPrimitives.ReadInt64LittleEndian(file.AsSpan(at)) != 256)
        {
            at -= 16;
        }

        return at;
    }

    private static byte[] Saved()
    {
        var context = new MLContext();
        using var stream = new MemoryStream();
        context.Data.SaveAsBinary(context.Data.LoadFromEnumerable(Source().Select(e => new Entry { Key = e.Key, Value = e.Value })), stream);
        return stream.ToArray();
    }

    private static IEnumerable<(string Key, double Value)> Source() => Enumerable.Range(0, Rows).Select(i => ($"fact {i * 7919 % Rows}", Math.Sqrt(i)));

    private sealed class Entry
    {
        public string Key { get; set; } = "";

        public double Value { get; set; }
    }
}
