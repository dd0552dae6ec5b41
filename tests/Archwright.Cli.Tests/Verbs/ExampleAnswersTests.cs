using System.Text.Json;
using Archwright.Cli.Running;
using Archwright.Cli.Tests.Running;
using Run = Archwright.Cli.Tests.Running.Run;

namespace Archwright.Cli.Tests.Verbs;

/// <summary>The examples through the whole program, as a new user would run them.</summary>
public sealed class ExampleAnswersTests
{
    private const double Felt = 0.05; // N

    public static TheoryData<string> Examples() =>
        [.. ExamplesTests.Files().Where(file => file != "bench-twist.json")];

    /// <summary>All forces on the teeth together are nil but for the force that holds the wire along the arch, which
    /// the answer tells: a wire with memory does not slide to the last digit. The mechanics tests hold the law itself;
    /// here it is a check that nothing is lost or turned on the way to the file.</summary>
    [Theory, Trait("basis", "law"), MemberData(nameof(Examples))]
    public async Task Every_example_is_engaged_and_the_wire_as_a_whole_is_in_balance(string example)
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", ExamplesTests.Copy(folder, example), "--json");

        Assert.Equal(ExitCode.Done, run.Code);
        double[][] forces =
        [
            .. run.Json().GetProperty("slots").EnumerateArray()
                .Select(slot => slot.GetProperty("force_N").EnumerateArray().Select(f => f.GetDouble()).ToArray()),
        ];
        double largest = forces.Max(force => Math.Sqrt(force.Sum(part => part * part)));
        Assert.True(largest > Felt, "An irregular arch is not passive.");
        double held = Math.Abs(run.Json().GetProperty("held_along_N").GetDouble());
        double together = Math.Sqrt(Enumerable.Range(0, 3)
            .Sum(axis => Math.Pow(forces.Sum(force => force[axis]), 2)));
        Assert.Equal(held, together, tolerance: 0.001 * largest);
    }

    /// <summary>What is displaced is pulled back: the force has the opposite sign of the offset.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData("upper-high-canine.json", "13", "occlusal_N", 1)]
    [InlineData("upper-blocked-out-lateral.json", "22", "labial_N", 1)]
    public async Task A_displaced_tooth_is_pulled_toward_its_place(string example, string tooth, string part, int sign)
    {
        using var folder = new Folder();

        Run run = await Run.Of("solve", ExamplesTests.Copy(folder, example), "--json");

        JsonElement slot = run.Json().GetProperty("slots").EnumerateArray()
            .Single(one => one.GetProperty("tooth").GetString() == tooth);
        Assert.Equal(sign, Math.Sign(slot.GetProperty(part).GetDouble()));
        Assert.True(Math.Abs(slot.GetProperty(part).GetDouble()) > Felt);
    }

    [Theory, Trait("basis", "ours"), MemberData(nameof(Examples))]
    public async Task Every_example_is_compared_with_a_picture(string example)
    {
        using var folder = new Folder();
        string stock = folder.Text("stock.txt", "niti-012\nss-016\n");
        string picture = folder.File("picture.svg");

        Run run = await Run.Of(
            "compare", ExamplesTests.Copy(folder, example), "--stock", stock, "--plot", picture);

        Assert.Equal(ExitCode.Done, run.Code);
        Assert.Empty(run.Error);
        Assert.Contains("niti-012", run.Output, StringComparison.Ordinal);
        Assert.Contains("A calculation, not a prescription", run.Output, StringComparison.Ordinal);
        string svg = await File.ReadAllTextAsync(picture, TestContext.Current.CancellationToken);
        Assert.Contains("<text", svg, StringComparison.Ordinal);
        Assert.Contains("Wires on this arch, the best first", svg, StringComparison.Ordinal);
    }

    [Fact, Trait("basis", "ours")]
    public async Task The_practices_own_ceilings_change_the_verdict()
    {
        using var folder = new Folder();
        string example = ExamplesTests.Copy(folder, "upper-mild.json");
        string stock = folder.Text("stock.txt", "niti-014\n");
        string strict = folder.Text("strict.csv", "group,force_N,source\nall,0.02,a test\n");

        Run usual = await Run.Of("compare", example, "--stock", stock, "--json");
        Run own = await Run.Of("compare", example, "--stock", stock, "--limits", strict, "--json");

        Assert.Equal(0, usual.Json().GetProperty("options")[0].GetProperty("teeth_above_ceiling").GetArrayLength());
        Assert.NotEqual(0, own.Json().GetProperty("options")[0].GetProperty("teeth_above_ceiling").GetArrayLength());
    }
}
