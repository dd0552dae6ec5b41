using Archwright.Dentition.Tables;
using Archwright.Validation.Record;

namespace Archwright.Validation.Tests.Record;

/// <summary>Faulty rows of the record do not load.</summary>
[Trait("basis", "law")]
public sealed class RecordTablesTests
{
    private const string Columns = "id,chapter,title,compute,with,published,unit,spread,accept,why,source,how\n";

    [Fact]
    public void A_whole_row_is_read()
    {
        PublishedCheck check = Assert.Single(
            Read("a,Beams,t,elastica,load=2; of=slope,1.1..1.5,N,SD 0.1,±10 %,why,book,found\n"));

        Assert.Equal(new Interval(1.1, 1.5), check.Published);
        Assert.Equal(0.99, check.Accept.Low, 12);
        Assert.Equal(1.65, check.Accept.High, 12);
        Assert.Equal(2, check.With.Number("load"));
        Assert.Equal("slope", check.With.Text("of"));
        Assert.Equal(7, check.With.Number("other", 7));
    }

    [Fact]
    public void The_other_set_up_of_a_ratio_has_what_differs() => Assert.Equal(
        "at=2; wire=ss-016", new SetUp("a", "wire=niti-016; at=2; other_wire=ss-016").Other().ToString());

    [Theory]
    [InlineData("a,b,t,c,,1,N,,±0.1,,,found", "no source")]
    [InlineData("a,b,t,c,,1,N,,±0.1,,book,heard", "'how' is 'heard'")]
    [InlineData("a,b,t,c,,one,N,,±0.1,,book,found", "'published' is 'one'")]
    [InlineData("a,b,t,c,,2..1,N,,±0.1,,book,found", "'published' is '2..1'")]
    [InlineData("a,b,t,c,,1,N,,about,,book,found", "'accept' is 'about'")]
    [InlineData("a,b,t,c,,1,N,,±-1,,book,found", "'accept' is '±-1'")]
    [InlineData("a,b,t,c,load,1,N,,±0.1,,book,found", "faulty set-up: 'load'")]
    public void A_faulty_row_is_refused(string row, string reason) =>
        Assert.Contains(
            reason, Assert.Throws<TableException>(() => Read(row)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_check_listed_twice_is_refused() => Assert.Throws<TableException>(
        () => Read("a,b,t,c,,1,N,,±0.1,,book,found\na,b,t,c,,1,N,,±0.1,,book,found\n"));

    [Fact]
    public void An_explanation_of_no_check_is_refused()
    {
        const string columns = "check,computed,verdict,reason,source,how\n";
        IReadOnlyList<PublishedCheck> checks = Read("a,b,t,c,,1,N,,±0.1,,book,found\n");

        Assert.Single(RecordTables.Differences(
            Table.Parse("d.csv", columns + "a,1..2,explained,because,book,computed\n"), checks));
        Assert.Throws<TableException>(() => RecordTables.Differences(
            Table.Parse("d.csv", columns + "z,1..2,explained,because,book,computed\n"), checks));
        Assert.Throws<TableException>(() => RecordTables.Differences(
            Table.Parse("d.csv", columns + "a,1..2,explained,because,,computed\n"), checks));
        Assert.Throws<TableException>(() => RecordTables.Differences(
            Table.Parse("d.csv", columns + "a,1..2,fine,because,book,computed\n"), checks));
    }

    private static IReadOnlyList<PublishedCheck> Read(string rows) =>
        RecordTables.Checks(Table.Parse("checks.csv", Columns + rows));
}
