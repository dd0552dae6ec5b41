using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tests.Comparison;

/// <summary>The table of ceilings, and what of a load is held against which ceiling.</summary>
public sealed class ForceCeilingsTests
{
    private const double Newtons = 0.00980665;

    private static IEnumerable<ToothNumber> Teeth =>
        ToothNumber.UpperArch.Concat(ToothNumber.LowerArch).Where(tooth => tooth.Position <= 7);

    /// <summary>Teaching values in gram-force: bodily movement 100–150, extrusion 50–75, intrusion 15–25 (student
    /// texts after older editions of W. R. Proffit, Contemporary Orthodontics; found); low end for incisors, high
    /// end for molars. Two decimals in N. 1 gf = 0.00980665 N.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(11, 100, 50, 15)]
    [InlineData(42, 100, 50, 15)]
    [InlineData(36, 150, 75, 25)]
    [InlineData(27, 150, 75, 25)]
    public void Forces_are_those_of_the_texts(int iso, double bodily, double extrusion, double intrusion)
    {
        Assert.Equal(bodily * Newtons, Limit(iso, LoadKind.LabiolingualForce), 0.006);
        Assert.Equal(bodily * Newtons, Limit(iso, LoadKind.MesiodistalForce), 0.006);
        Assert.Equal(extrusion * Newtons, Limit(iso, LoadKind.ExtrusionForce), 0.006);
        Assert.Equal(intrusion * Newtons, Limit(iso, LoadKind.IntrusionForce), 0.006);
    }

    /// <summary>A moment of 5–20 N·mm is thought useful for torque (C. J. Burstone 1982, quoted in A. Arreghini et
    /// al., Prog Orthod 2014;15:53; found).</summary>
    [Fact, Trait("basis", "published")]
    public void Torque_may_reach_the_upper_end_of_the_useful_window() =>
        Assert.All(Teeth, tooth => Assert.Equal(20, Limit(tooth.Iso, LoadKind.TorqueMoment)));

    /// <summary>Turning moments as a force of the texts times an arm of the anatomy table: rotation at both sides
    /// of the crown, uprighting at the centre of resistance.</summary>
    [Fact, Trait("basis", "independent")]
    public void Moments_are_a_force_of_the_texts_times_an_arm_of_the_tooth()
    {
        foreach (ToothNumber tooth in Teeth)
        {
            Anatomy anatomy = Anatomy.Of(tooth);
            double share = tooth.Position <= 2 ? 0 : tooth.IsMolar ? 1 : 0.5;
            double rotation = (50 + 25 * share) * Newtons * anatomy.CrownWidth.Value;
            double tip = (75 + 50 * share) * Newtons * anatomy.SlotToResistance.Value;
            Assert.Equal(rotation, Limit(tooth.Iso, LoadKind.RotationMoment), 0.051);
            Assert.Equal(tip, Limit(tooth.Iso, LoadKind.TipMoment), 0.051);
        }
    }

    [Fact, Trait("basis", "ours")]
    public void Every_tooth_and_kind_has_a_ceiling_with_a_source()
    {
        Assert.Equal(28 * LoadKinds.All.Count, ForceCeilings.Default.All.Count);
        Assert.All(ForceCeilings.Default.All, one =>
        {
            Assert.NotEmpty(one.Limit.Source);
            Assert.Equal(one.Kind.Unit(), one.Limit.Unit);
        });
        Assert.Null(ForceCeilings.Default.Find(ToothNumber.FromIso(18), LoadKind.TipMoment));
        Assert.Empty(ForceCeilings.None.All);
    }

    [Fact, Trait("basis", "ours")]
    public void Every_kind_reads_back_from_its_code_and_has_words()
    {
        foreach (LoadKind kind in LoadKinds.All)
        {
            Assert.True(LoadKinds.TryParse(kind.Code(), out LoadKind again));
            Assert.Equal(kind, again);
            Assert.NotEmpty(kind.Words());
            Assert.EndsWith(kind.IsForce() ? "_force" : "_moment", kind.Code(), StringComparison.Ordinal);
        }

        Assert.False(LoadKinds.TryParse("push", out _));
    }

    [Fact, Trait("basis", "law")]
    public void A_load_is_told_apart_by_kind_and_extrusion_from_intrusion()
    {
        var load = new ClinicalLoad(-1, -2, 3, -4, 5, -6);
        double[] figures = [.. LoadKinds.All.Select(kind => kind.Of(load))];

        Assert.Equal([1, 3, 0, 2, 4, 5, 6], figures);
        Assert.Equal(2, LoadKind.ExtrusionForce.Of(load with { OcclusalForce = 2 }));
    }

    [Fact, Trait("basis", "ours")]
    public void A_practice_may_set_ceilings_of_its_own()
    {
        var tooth = ToothNumber.FromIso(12);
        ForceCeilings own = ForceCeilings.Default.With([Ceiling(tooth, LoadKind.IntrusionForce, 0.1)]);

        Assert.Equal(0.1, own.Find(tooth, LoadKind.IntrusionForce)!.Limit.Value);
        Assert.Equal(ForceCeilings.Default.All.Count, own.All.Count);
        Assert.Throws<ArgumentException>(() => new ForceCeilings([Ceiling(tooth, LoadKind.TipMoment, double.NaN)]));
        Assert.Throws<ArgumentException>(() => new ForceCeilings(
            [Ceiling(tooth, LoadKind.TipMoment, 5), Ceiling(tooth, LoadKind.TipMoment, 6)]));
    }

    [Theory, Trait("basis", "ours")]
    [InlineData("upper,1,push,1,N,,book,found", "no kind of load")]
    [InlineData("upper,1,extrusion_force,1,gf,,book,found", "Give it in N")]
    [InlineData("upper,1,extrusion_force,0,N,,book,found", "must be positive")]
    [InlineData("upper,1,extrusion_force,1,N,,,found", "no source")]
    public void A_faulty_row_is_refused_with_its_reason(string row, string reason)
    {
        var fault = Assert.Throws<TableException>(() => ForceCeilings.Read(
            Table.Parse("ceilings.csv", "jaw,position,kind,value,unit,spread,source,how\n" + row)));
        Assert.Contains(reason, fault.Message, StringComparison.Ordinal);
    }

    private static double Limit(int iso, LoadKind kind) =>
        ForceCeilings.Default.Find(ToothNumber.FromIso(iso), kind)!.Limit.Value;

    private static ForceCeiling Ceiling(ToothNumber tooth, LoadKind kind, double value) =>
        new(tooth, kind, new Sourced(value, kind.Unit(), "", "the practice", "found"));
}
