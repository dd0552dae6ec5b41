using System.Text;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Files;

/// <summary>Files that cannot be taken as text.</summary>
[Trait("basis", "docs")]
public sealed class InputFileTests
{
    [Theory]
    [InlineData("no/such/folder/case.json", "AW-FILE-001")]
    [InlineData("", "AW-FILE-003")]
    [InlineData("case\0.json", "AW-FILE-003")]
    public void A_name_that_leads_nowhere_is_a_problem(string path, string code) =>
        Assert.Equal(code, Assert.Single(CaseReader.Read(path).Problems).Code);

    [Fact]
    public void A_name_of_endless_length_is_a_problem() =>
        Assert.Single(CaseReader.Read(new string('x', 40_000)).Problems);

    [Fact]
    public void A_case_is_read_from_a_file_that_another_program_has_open_for_reading()
    {
        string path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllText(path, Texts.Arch);
            using FileStream other = File.OpenRead(path);

            Assert.NotNull(CaseReader.Read(path).Value);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void Text_in_UTF_16_is_told_apart_from_a_file_that_is_no_text()
    {
        byte[] utf16 = [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Texts.Arch)];

        Assert.Equal("AW-FILE-007", Assert.Single(Texts.ReadCase(utf16).Problems).Code);
        Assert.Equal("AW-FILE-006", Assert.Single(Texts.ReadCase(Encoding.Unicode.GetBytes(Texts.Arch)).Problems).Code);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(500)]
    public void The_place_of_the_first_byte_that_is_not_in_UTF_8_is_told(int before)
    {
        byte[] text = [.. Encoding.UTF8.GetBytes(new string('ä', before)), 0xE4, (byte)'x'];

        Assert.Equal($"line 1, column {before + 1}", Assert.Single(Texts.ReadCase(text).Problems).Path);
    }

    [Fact]
    public void The_stream_is_left_open()
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(Texts.Arch));

        Assert.NotNull(CaseReader.Read(stream).Value);
        Assert.True(stream.CanRead);
    }

    [Fact]
    public void The_largest_file_is_still_read_and_one_byte_more_is_not()
    {
        byte[] fits = Encoding.UTF8.GetBytes(Texts.Arch.PadRight(5_000_000));
        byte[] tooLarge = Encoding.UTF8.GetBytes(Texts.Arch.PadRight(5_000_001));

        Assert.Empty(Texts.ReadCase(fits).Problems);
        Assert.Equal("AW-FILE-005", Assert.Single(Texts.ReadCase(tooLarge).Problems).Code);
    }
}
