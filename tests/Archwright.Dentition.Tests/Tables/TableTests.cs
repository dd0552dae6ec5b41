using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Tests.Tables;

/// <summary>Reading the library's own data tables.</summary>
[Trait("basis", "ours")]
public sealed class TableTests
{
    [Fact]
    public void Quotes_commas_comments_and_line_ends_are_read()
    {
        IReadOnlyList<TableRow> rows = Table.Parse(
            "t.csv", "# a note\r\na,b\r\n1,\"two, \"\"three\"\"\"\r\n\n# another\nx, y \n");

        Assert.Equal(2, rows.Count);
        Assert.Equal("two, \"three\"", rows[0].Text("b"));
        Assert.Equal("y", rows[1].Text("b"));
        Assert.Equal(3, rows[0].Line);
        Assert.Equal(6, rows[1].Line);
    }

    [Theory]
    [InlineData("a,a\n", "two columns")]
    [InlineData("a,b\n\"x,1\n", "a quote is not closed")]
    [InlineData("a,b\n1\n", "1 cells")]
    public void A_broken_table_is_refused_with_its_line(string text, string reason)
    {
        var fault = Assert.Throws<TableException>(() => Table.Parse("t.csv", text));
        Assert.Contains(reason, fault.Message, StringComparison.Ordinal);
        Assert.Contains("t.csv, line", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nan")]
    [InlineData("1e999")]
    [InlineData("1,5")]
    [InlineData("")]
    public void What_is_no_plain_number_is_refused(string text)
    {
        TableRow row = Assert.Single(Table.Parse("t.csv", $"a,b\n\"{text}\",x\n"));
        Assert.Throws<TableException>(() => row.Number("a"));
        Assert.Throws<TableException>(() => row.Integer("b"));
        Assert.Throws<TableException>(() => row.Text("c"));
    }

    [Fact]
    public void A_missing_table_is_named() => Assert.Contains(
        "Nowhere/none.csv", Assert.Throws<TableException>(() => Table.Embedded("Nowhere/none.csv")).Message,
        StringComparison.Ordinal);
}
