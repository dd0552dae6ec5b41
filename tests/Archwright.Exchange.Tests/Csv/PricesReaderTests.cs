using System.Text;
using Archwright.Exchange.Csv;

namespace Archwright.Exchange.Tests.Csv;

/// <summary>What wires cost.</summary>
[Trait("basis", "docs")]
public sealed class PricesReaderTests
{
    [Theory]
    [InlineData("id,price\nss-016,2.50\nniti-014,7\n")]
    [InlineData("price;id\n2.5;SS-016\n7.00;niti-014\n")]
    public void Each_wire_has_its_price(string text)
    {
        var read = PricesReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

        Assert.Empty(read.Problems);
        Assert.Equal(2, read.Value!.Count);
        Assert.Equal(2.5m, read.Value["ss-016"]);
        Assert.Equal(7m, read.Value["niti-014"]);
    }

    [Theory]
    [InlineData("id,price\nss-0160,1\n", "AW-STOCK-001", "line 2, id")]
    [InlineData("id,price\nss-016,cheap\n", "AW-TABLE-007", "line 2, price")]
    [InlineData("id,price\nss-016,-1\n", "AW-TABLE-007", "line 2, price")]
    [InlineData("id,price\nss-016,1\nss-016,2\n", "AW-TABLE-010", "line 3, id")]
    [InlineData("id,prize\nss-016,1\n", "AW-TABLE-002", "line 1, column 2")]
    [InlineData("id,price\n,1\n", "AW-TABLE-008", "line 2, id")]
    public void What_is_wrong_is_told_with_its_place(string text, string code, string place)
    {
        var read = PricesReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

        Assert.Null(read.Value);
        Assert.Contains((code, place), read.Problems.Select(problem => (problem.Code, problem.Path)));
    }

    [Fact]
    public void A_table_without_rows_is_refused()
    {
        var read = PricesReader.Read(new MemoryStream("id,price\n"u8.ToArray()));

        Assert.Equal("AW-TABLE-001", Assert.Single(read.Problems).Code);
    }
}
