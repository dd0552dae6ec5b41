using Archwright.Dentition.Outlines;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Tests.Outlines;

/// <summary>Teeth in space. Rests on the anatomy table, on the number of roots that textbooks give (common practice, no
/// source) and on Gauss's theorem for the volume.</summary>
[Trait("basis", "law")]
public sealed class ToothShapeTests
{
    public static TheoryData<int> Teeth =>
        [.. Jaw.Upper.Teeth().Concat(Jaw.Lower.Teeth()).Where(tooth => tooth.Position <= 7).Select(tooth => tooth.Iso)];

    [Theory, MemberData(nameof(Teeth))]
    public void Widths_depths_and_heights_are_those_of_the_anatomy_table(int iso)
    {
        var tooth = ToothNumber.FromIso(iso);
        Anatomy anatomy = Anatomy.Of(tooth);
        Crown size = Crowns.Of(tooth)!;
        ToothShape shape = ToothShape.Of(tooth)!;
        int occlusal = ClinicalAxes.For(tooth).Jaw;

        Assert.Equal(anatomy.CrownWidth.Value, Extent(shape.Crown, 0), 0.02 * anatomy.CrownWidth.Value);
        Assert.Equal(anatomy.CrownDepth.Value, Extent(shape.Crown, 1), 0.06 * anatomy.CrownDepth.Value);
        Assert.Equal(size.SlotToEdge, Along(shape.Crown, 2).Max(z => occlusal * z), 0.05 * anatomy.CrownHeight.Value);
        Assert.Equal(size.SlotToEdge - size.Height, Along(shape.Crown, 2).Min(z => occlusal * z), 1e-3);
        Assert.Equal(
            anatomy.RootLength.Value, Extent(shape.Root, 2), 0.07 * anatomy.RootLength.Value);
    }

    [Theory, MemberData(nameof(Teeth))]
    public void Triangles_look_outward_so_that_the_volume_is_positive_and_plausible(int iso)
    {
        var tooth = ToothNumber.FromIso(iso);
        Anatomy anatomy = Anatomy.Of(tooth);
        ToothShape shape = ToothShape.Of(tooth)!;
        double box = anatomy.CrownWidth.Value * anatomy.CrownDepth.Value * anatomy.CrownHeight.Value;

        Assert.InRange(Volume(shape.Crown), 0.25 * box, 0.8 * box);
        Assert.True(Volume(shape.Root) > 0);
    }

    [Fact]
    public void Left_teeth_mirror_right_ones()
    {
        ToothShape right = ToothShape.Of(ToothNumber.FromIso(16))!;
        ToothShape left = ToothShape.Of(ToothNumber.FromIso(26))!;

        Assert.Equal(Along(right.Crown, 0), Along(left.Crown, 0).Select(x => -x));
        Assert.Equal(Along(right.Root, 1), Along(left.Root, 1));
        Assert.Equal(Volume(right.Crown), Volume(left.Crown), 1e-6);
    }

    [Theory]
    [InlineData(16, 3)]
    [InlineData(46, 2)]
    [InlineData(14, 2)]
    [InlineData(11, 1)]
    [InlineData(43, 1)]
    public void Each_kind_of_tooth_has_its_number_of_apices(int iso, int roots)
    {
        Surface root = ToothShape.Of(ToothNumber.FromIso(iso))!.Root;
        int rings = root.Points.Length / 3 / roots;

        // Each root is closed by one point that all triangles of its last ring share.
        Assert.Equal(0, root.Points.Length / 3 % roots);
        Assert.Equal(
            roots,
            root.Triangles.GroupBy(point => point).Count(group => group.Count() == 36 && (group.Key + 1) % rings == 0));
    }

    private static double Extent(Surface surface, int axis) =>
        Along(surface, axis).Max() - Along(surface, axis).Min();

    private static IEnumerable<double> Along(Surface surface, int axis)
    {
        for (int i = axis; i < surface.Points.Length; i += 3)
            yield return surface.Points[i];
    }

    // Sum of the tetrahedra from the middle of the open ring, which lies flat; the ring adds nothing then.
    private static double Volume(Surface surface)
    {
        double[] middle = [.. Enumerable.Range(0, 3).Select(axis => Along(surface, axis).Take(36).Average())];
        double sum = 0;
        for (int i = 0; i < surface.Triangles.Length; i += 3)
        {
            double[] a = Corner(surface, surface.Triangles[i], middle);
            double[] b = Corner(surface, surface.Triangles[i + 1], middle);
            double[] c = Corner(surface, surface.Triangles[i + 2], middle);
            sum += (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2])
                + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
        }

        return sum;
    }

    private static double[] Corner(Surface surface, int point, double[] from) =>
        [.. Enumerable.Range(0, 3).Select(axis => surface.Points[3 * point + axis] - from[axis])];
}
