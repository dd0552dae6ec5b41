using System.Text;
using Archwright.Cli.Pictures;

namespace Archwright.Cli.Tests.Pictures;

[Trait("basis", "ours")]
public sealed class SheetTests
{
    [Fact]
    public void Look()
    {
        string? folder = Environment.GetEnvironmentVariable("ARCHWRIGHT_PICTURES");
        if (folder is null)
            return;
        foreach (PictureSide side in new[] { PictureSide.Upper, PictureSide.Lower })
        foreach (string ending in new[] { ".png", ".svg" })
            File.WriteAllBytes(Path.Combine(folder, side + ending), [.. SamplePicture.Drawn(SamplePicture.HighCanine(side), ending)]);
    }
}
