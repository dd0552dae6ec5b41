using System.Text;
using Archwright.Exchange.Csv;

namespace Archwright.Exchange.Tests.Csv;

/// <summary>Which wires are in stock.</summary>
[Trait("basis", "docs")]
public sealed class StockReaderTests
{
    [Theory]
    [InlineData("ss-016\nniti-014\n")]
    [InlineData("\uFEFFss-016\r\nniti-014\r\n")]
    [InlineData("# drawer 2\n\n  ss-016  \nNITI-014\nss-016")]
    [InlineData("wire\nss-016\nniti-014\n")]
    [InlineData("wire,packs,price\nss-016,3,\"1,50\"\nniti-014,1,2\n")]
    [InlineData("shelf;Wire\n2;ss-016\n3;\"niti-014\"\n")]
    [InlineData("wire\tnote\nss-016\t\"says \"\"steel\"\",\nover two lines\"\nniti-014\t\n")]
    public void Lists_and_tables_give_each_wire_once_in_order(string text)
    {
        var read = StockReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

        Assert.Empty(read.Problems);
        Assert.Equal(["ss-016", "niti-014"], read.Value!.Select(wire => wire.Id));
    }

    [Fact]
    public void All_problems_come_at_once_with_their_lines()
    {
        var read = StockReader.Read(new MemoryStream(Encoding.UTF8.GetBytes("wire,packs\nss-0160,1\nss-016\n,3\nss-018,2\n")));

        Assert.Equal(
            [("AW-STOCK-001", "line 2, wire"), ("AW-TABLE-005", "line 3"), ("AW-TABLE-008", "line 4, wire")],
            read.Problems.Select(p => (p.Code, p.Path)));
    }

    [Fact]
    public void A_list_without_wires_is_refused()
    {
        var read = StockReader.Read(new MemoryStream("# nothing yet\n"u8.ToArray()));

        Assert.Equal("AW-TABLE-001", Assert.Single(read.Problems).Code);
    }
}
