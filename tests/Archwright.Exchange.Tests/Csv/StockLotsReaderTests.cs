using System.Text;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Csv;

/// <summary>Lists of lots. Rests on what stands in them.</summary>
[Trait("basis", "law")]
public sealed class StockLotsReaderTests
{
    [Fact]
    public void A_list_is_read_row_by_row()
    {
        IReadOnlyList<StockLotRow> lots = Read(
            "wire,arch,form,lot,gtin,expires,pieces,reorder_at\n"
            + "niti-014,upper,\"ovoid, large\",A-1,9506000134352,2027-03-31,10,3\n"
            + "ss-016,either,,B-2,,,0,\n").Value!;

        Assert.Equal(
            new StockLotRow(
                "niti-014", Jaw.Upper, "ovoid, large", "A-1", "09506000134352", new DateOnly(2027, 3, 31), 10, 3),
            lots[0]);
        Assert.Equal(new StockLotRow("ss-016", null, "", "B-2", "", null, 0, 0), lots[1]);
    }

    [Fact]
    public void A_wire_of_the_practices_own_is_taken_by_the_name_it_has_on_the_shelf()
    {
        using var list = new MemoryStream("wire,lot,pieces\nour-reverse,A-1,5\n"u8.ToArray());

        Assert.Equal("our-reverse", Assert.Single(StockLotsReader.Read(list, ["our-reverse"]).Value!).WireId);
        list.Position = 0;
        Assert.Equal("AW-STOCK-001", Assert.Single(StockLotsReader.Read(list, ["another"]).Problems).Code);
    }

    [Fact]
    public void All_that_is_wrong_is_listed_with_its_line_and_nothing_is_taken()
    {
        Read<IReadOnlyList<StockLotRow>> read = Read(
            "wire,arch,lot,gtin,expires,pieces\n"
            + "niti-014,upper,A-1,,,5\n"
            + "niti-0014,middle,,123,31.3.2027,-1\n"
            + "niti-014,upper,A-1,,,6\n"
            + "ss-016,lower,C-3,,,2.5\n");

        Assert.Null(read.Value);
        Assert.Equal(
            [
                "line 3, wire", "line 3, lot", "line 3, arch", "line 3, gtin", "line 3, expires", "line 3, pieces",
                "line 4, lot", "line 5, pieces",
            ],
            read.Problems.Select(one => one.Path));
        Assert.All(read.Problems, one => Assert.NotEmpty(one.Remedy));
    }

    private static Read<IReadOnlyList<StockLotRow>> Read(string text) =>
        StockLotsReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));
}
