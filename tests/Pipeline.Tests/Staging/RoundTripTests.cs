using System.Globalization;
using System.Text;
using CsCheck;
using PartsSignal.Pipeline.Config;
using PartsSignal.Pipeline.Reading;
using PartsSignal.Pipeline.Staging;

namespace PartsSignal.Pipeline.Tests.Staging;

/// <summary>Numbers and text are what the file says: random rows in random dialects come back the same.</summary>
public sealed class RoundTripTests
{
    private static readonly Gen<string> Word = Gen.Select(One("", "A", "bf"), Gen.Int[0, 999], One("", "-", "/", "."), One("", "C", "7")).Select(t => $"{t.Item1}{t.Item2}{t.Item3}{t.Item4}");
    private static readonly Gen<string> Text = One(" Pump", " BELT", " na\u00efve", " fa\u00e7ade 7", " seal", " ", ",", ";", "|", "\t", "\"", "'", "-", "/", ".", "(", ")", "\n").Array[0, 15].Select(string.Concat);
    private static readonly Gen<Order> Orders = Gen.Select(Word, Gen.Int[0, 20_000], Word, Text, Gen.Int[0, 999], Gen.Int[0, 9_999_999])
        .Select(t => new Order("ID" + t.Item1, new DateOnly(1980, 1, 1).AddDays(t.Item2), "P" + t.Item3, t.Item4, t.Item5, t.Item6 / 100m));

    private static readonly Gen<Dialect> Dialects = Gen.Select(
        One(',', ';', '\t', '|'), One("\n", "\r\n"), One("utf-8", "utf-8-mark", "utf-16", "windows-1252"), Gen.Bool, Gen.Bool, One("dd/MM/yyyy", "MM/dd/yyyy", "yyyy-MM-dd", "d.M.yyyy"))
        .Select(t => new Dialect(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6));

    private static Gen<T> One<T>(params T[] choices) => Gen.Int[0, choices.Length - 1].Select(i => choices[i]);

    [Fact]
    public void StageAsync_RandomRowsInARandomDialect_ReadBackTheSame() => HoldsFor(30);

    [LongFact]
    public void StageAsync_RandomRowsInManyDialects_ReadBackTheSame() => HoldsFor(150);

    private static void HoldsFor(int runs) => Gen.Select(Orders.Array[1, 20], Dialects).ForAll(
        (orders, dialect) => Same(orders, dialect).GetAwaiter().GetResult(), runs);

    private static async Task<bool> Same(Order[] orders, Dialect dialect)
    {
        using var rig = new StagingRig();
        rig.Write("orders.txt", dialect.Bytes(orders));
        var map = new SourceMap
        {
            Files = "orders.txt",
            Kind = "part_orders",
            DateOrder = dialect.DateFormat.StartsWith('M') ? "mdy" : "dmy",
            NumberStyle = dialect.DecimalComma ? "comma" : "point",
            Columns = new Dictionary<string, IReadOnlyList<string>>
            {
                ["order_id"] = ["Order"],
                ["ordered_on"] = ["Day"],
                ["part"] = ["Part"],
                ["description"] = ["Text"],
                ["quantity"] = ["Pieces"],
                ["unit_cost"] = ["Cost"],
            },
        };
        StagedFile file = (await rig.StageAllAsync(new ShopSettings { Sources = [map] })).Single();
        return file.Rejected == 0 && file.RowsRead == orders.Length
            && StagingRig.Rows(file, "staged_part_orders", "order_id, ordered_on, part_raw, description, quantity, unit_cost").SequenceEqual(orders.Select(o => o.Line));
    }

    private sealed record Order(string Id, DateOnly Day, string Part, string Text, int Pieces, decimal Cost)
    {
        public string Line => string.Join('|', Id, Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Part, Description, Pieces.ToString(CultureInfo.InvariantCulture), Cost.ToString("0.00", CultureInfo.InvariantCulture));

        private string Description => PartsSignal.Pipeline.Cleaning.EmptyMark.Is(Text) ? "-" : Text.Trim();
    }

    private sealed record Dialect(char Separator, string LineEnd, string Encoding, bool DecimalComma, bool QuoteAll, string DateFormat)
    {
        public byte[] Bytes(Order[] orders)
        {
            System.Text.Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);
            var text = new StringBuilder(string.Join(Separator, "Order", "Day", "Part", "Text", "Pieces", "Cost")).Append(LineEnd);
            foreach (Order order in orders)
            {
                string cost = order.Cost.ToString("0.00", CultureInfo.InvariantCulture);
                text.AppendJoin(Separator, new[] { order.Id, order.Day.ToString(DateFormat, CultureInfo.InvariantCulture), order.Part, order.Text, order.Pieces.ToString(CultureInfo.InvariantCulture), DecimalComma ? cost.Replace('.', ',') : cost }.Select(Cell)).Append(LineEnd);
            }

            return Encoding switch
            {
                "utf-8" => new UTF8Encoding(false).GetBytes(text.ToString()),
                "utf-8-mark" => [0xef, 0xbb, 0xbf, .. new UTF8Encoding(false).GetBytes(text.ToString())],
                "utf-16" => [0xff, 0xfe, .. System.Text.Encoding.Unicode.GetBytes(text.ToString())],
                _ => System.Text.Encoding.GetEncoding(1252).GetBytes(text.ToString()),
            };
        }

        private string Cell(string text) =>
            QuoteAll || text.IndexOfAny([Separator, '"', '\n', '\r']) >= 0 || text.Trim() != text ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"" : text;
    }
}
