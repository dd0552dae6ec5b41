using System.Text;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.Csv;
using Archwright.Exchange.Problems;

namespace Archwright.Exchange.Tests.Csv;

/// <summary>A practice's own ceilings.</summary>
[Trait("basis", "docs")]
public sealed class CeilingsReaderTests
{
    [Fact]
    public void What_the_table_names_changes_and_the_rest_stays()
    {
        ForceCeilings ceilings = Good("tooth,movement,force_N,source\n13,intrusion,0.07,ward rule 3\n");

        ForceCeiling own = ceilings.Find(ToothNumber.FromIso(13), LoadKind.IntrusionForce)!;
        Assert.Equal((0.07, "N", "ward rule 3"), (own.Limit.Value, own.Limit.Unit, own.Limit.Source));
        Assert.NotEqual(0.07, ForceCeilings.Default.Find(ToothNumber.FromIso(13), LoadKind.IntrusionForce)!.Limit.Value);
        Assert.Equal(
            ForceCeilings.Default.All.Where(c => (c.Tooth.Iso, c.Kind) != (13, LoadKind.IntrusionForce)),
            ceilings.All.Where(c => (c.Tooth.Iso, c.Kind) != (13, LoadKind.IntrusionForce)));
    }

    [Theory]
    [InlineData("incisors", new[] { 11, 12, 21, 22, 31, 32, 41, 42 })]
    [InlineData("upper canines", new[] { 13, 23 })]
    [InlineData("Lower  Premolars", new[] { 34, 35, 44, 45 })]
    [InlineData("lower molars", new[] { 36, 37, 38, 46, 47, 48 })]
    public void A_group_means_its_teeth(string group, int[] teeth)
    {
        ForceCeilings ceilings = Good($"group,movement,force_N,source\n{group},extrusion,0.07,own\n");

        Assert.Equal(teeth, ceilings.All.Where(c => c.Limit.Value == 0.07).Select(c => c.Tooth.Iso).Order());
    }

    [Theory]
    [InlineData("all", 32)]
    [InlineData("upper", 16)]
    public void Whole_arches_are_groups_too(string group, int count) => Assert.Equal(
        count, Good($"group,movement,force_N,source\n{group},extrusion,0.07,own\n").All.Count(c => c.Limit.Value == 0.07));

    [Theory]
    [InlineData("tooth,group,movement,force_N,source\n,canines,tip,,x", false)]
    [InlineData("tooth,group,force_N,source\n13,,0.09,own\n,canines,0.07,own\n", true)]
    [InlineData("tooth,group,force_N,source\n,canines,0.07,own\n13,,0.09,own\n", true)]
    public void A_row_for_a_tooth_goes_before_one_for_its_group_in_either_order(string text, bool isGood)
    {
        var read = Read(text);

        Assert.Equal(isGood, read.Value is not null);
        if (read.Value is { } ceilings)
        {
            Assert.Equal(0.09, ceilings.Find(ToothNumber.FromIso(13), LoadKind.ExtrusionForce)!.Limit.Value);
            Assert.Equal(0.07, ceilings.Find(ToothNumber.FromIso(23), LoadKind.ExtrusionForce)!.Limit.Value);
        }
    }

    [Fact]
    public void Without_a_movement_a_row_holds_for_all_forces_or_for_all_moments()
    {
        ForceCeilings forces = Good("tooth,force_N,source\n13,0.07,own\n");
        ForceCeilings moments = Good("tooth,moment_N_mm,source\n13,0.7,own\n");

        Assert.Equal(LoadKinds.All.Where(k => k.IsForce()), forces.All.Where(c => c.Limit.Value == 0.07).Select(c => c.Kind));
        Assert.Equal(LoadKinds.All.Where(k => !k.IsForce()), moments.All.Where(c => c.Limit.Value == 0.7).Select(c => c.Kind));
    }

    [Theory]
    [InlineData("tooth,movement,force_N,source\n13,intrusion,0.2,\n", "AW-TABLE-008")]                  // no source
    [InlineData("tooth,movement,force_N,source\n19,intrusion,0.2,own\n", "AW-CEILING-001")]
    [InlineData("tooth,group,movement,force_N,source\n13,canines,intrusion,0.2,own\n", "AW-CEILING-001")]
    [InlineData("tooth,movement,force_N,source\n13,intrusion,-0.2,own\n", "AW-TABLE-007")]
    [InlineData("tooth,movement,force_N,source\n13,intrusion,NaN,own\n", "AW-TABLE-007")]
    [InlineData("tooth,movement,force_N,source\n13,intrusion,1e400,own\n", "AW-TABLE-007")]
    [InlineData("tooth,movement,force_N,moment_N_mm,source\n13,torque,1,,own\n", "AW-CEILING-002")]    // a moment under force
    [InlineData("movement,force_N,source\nintrusion,0.2,own\n", "AW-TABLE-003")]
    [InlineData("tooth,movement,source\n13,intrusion,own\n", "AW-TABLE-003")]
    public void A_wrong_row_is_refused(string text, string code) => Assert.Equal(code, Assert.Single(Read(text).Problems).Code);

    private static Read<ForceCeilings> Read(string text) => CeilingsReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    private static ForceCeilings Good(string text)
    {
        var read = Read(text);
        Assert.True(read.Value is not null, string.Join("\n", read.Problems));
        return read.Value!;
    }
}
