using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Json;

/// <summary>What is not JSON is said in plain words, at the place where a person would look for it.</summary>
[Trait("basis", "docs")]
public sealed class JsonTextTests
{
    [Theory]
    [InlineData("{\"a\": NaN}", "AW-JSON-005", "line 1, column 7")]
    [InlineData("{\"a\": -Infinity}", "AW-JSON-005", "line 1, column 8")]
    [InlineData("{\"a\": 01}", "AW-JSON-005", "line 1, column 8")]
    [InlineData("{\"a\": .5}", "AW-JSON-005", "line 1, column 7")]
    [InlineData("{\"a\": 1.}", "AW-JSON-005", "line 1, column 9")]
    [InlineData("{\"a\": +1}", "AW-JSON-005", "line 1, column 7")]
    [InlineData("{\"a\": 0,5}", "AW-JSON-005", "line 1, column 8")]
    [InlineData("{\n  \"ä\": 1, /* no */ \"b\": 2 }", "AW-JSON-003", "line 2, column 11")]
    [InlineData("{\r\n  \"a\": 1,\r\n}", "AW-JSON-004", "line 2, column 9")]
    [InlineData("{\"a\": [1, 2, ]}", "AW-JSON-004", "line 1, column 12")]
    [InlineData("{\"a\": [1, 2", "AW-JSON-002", "line 1, column 12")]
    [InlineData("{\"a\": \"b", "AW-JSON-002", null)]
    [InlineData("{'a': 1}", "AW-JSON-001", "line 1, column 2")]
    [InlineData("{a: 1}", "AW-JSON-001", "line 1, column 2")]
    [InlineData("{\"a\": 1 \"b\": 2}", "AW-JSON-001", "line 1, column 9")]
    [InlineData("{\"a\": True}", "AW-JSON-001", "line 1, column 7")]
    [InlineData("{\"a\": 1} x", "AW-JSON-001", "line 1, column 10")]
    [InlineData("{\"a\": \"b\\ud800\"}", "AW-JSON-008", "line 1, column 7")]
    [InlineData("{\"\\udc00\": 1}", "AW-JSON-008", "line 1, column 2")]
    public void A_slip_is_one_problem_with_line_and_column(string text, string code, string? place)
    {
        Problem problem = Assert.Single(Texts.ReadCase(text).Problems);

        Assert.Equal(code, problem.Code);
        if (place is not null)
            Assert.Equal(place, problem.Path);
    }

    [Fact]
    public void A_byte_order_mark_is_welcome() =>
        Assert.Empty(Texts.ReadCase([0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Texts.Arch)]).Problems);

    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("\"archwright-case/1\"")]
    [InlineData("42")]
    public void A_file_that_is_no_group_is_refused_as_such(string text)
    {
        Problem problem = Assert.Single(Texts.ReadCase(text).Problems);

        Assert.Equal(("AW-VALUE-001", Problem.WholeFile), (problem.Code, problem.Path));
    }

    [Fact]
    public void Odd_keys_stand_in_brackets_in_a_path()
    {
        Problem problem = Texts.ReadCase(Texts.Replaced(Texts.Arch, "\"kind\": \"closed\"", "\"kind\": \"closed\", \"my key\": 1")).Problems[0];

        Assert.Equal("slots[0].tie[\"my key\"]", problem.Path);
    }
}
