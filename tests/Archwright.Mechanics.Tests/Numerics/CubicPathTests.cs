using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using CsCheck;

namespace Archwright.Mechanics.Tests.Numerics;

public sealed class CubicPathTests
{
    /// <summary>A cubic is its own not-a-knot spline, whatever the knots: C. de Boor, A Practical Guide to Splines, ch.
    /// IV (from memory). Knots at random distances.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(9)]
    public void The_slopes_of_a_cubic_are_found_exactly(int knots)
    {
        var random = new Random(knots);
        double[] at = new double[knots];
        for (int i = 1; i < knots; i++)
            at[i] = at[i - 1] + 0.2 + random.NextDouble();
        double[] steps = [.. at.Zip(at.Skip(1), (a, b) => b - a)];
        Vector3[] points = [.. at.Select(t => Cubic(t))];

        Vector3[] slopes = SplineSlopes.NotAKnot(points, steps);

        for (int i = 0; i < knots; i++)
            Assert.Equal(0, (slopes[i] - CubicSlope(at[i])).Length, tolerance: 1e-11);
    }

    [Fact, Trait("basis", "law")]
    public void Three_points_make_a_parabola_and_two_a_straight_line()
    {
        Vector3[] slopes = SplineSlopes.NotAKnot([new(0, 0, 0), new(1, 1, 0), new(3, 9, 0)], [1, 2]);

        Assert.Equal([0, 2, 6], slopes.Select(s => s.Y), (a, b) => Math.Abs(a - b) < 1e-13);
        Assert.Equal(5, CubicPath.ThroughPoints([new(0, 0, 0), new(3, 4, 0)]).Length, tolerance: 1e-14);
    }

    /// <summary>A quarter of a circle: length Rπ/2, points at distance R, tangent at right angles to the radius. A
    /// cubic spline through n + 1 points of it errs by the fourth power of the step: twice the points, a
    /// sixteenth.</summary>
    [Fact, Trait("basis", "independent")]
    public void A_circle_is_followed_to_the_fourth_order()
    {
        double[] errors = [.. ((int[])[8, 16, 32]).Select(n => Math.Abs(Circle(n).Length - 20 * Math.PI / 2))];

        Assert.True(errors[1] < errors[0] / 10, $"{errors[0]:e2} {errors[1]:e2}");
        Assert.True(errors[2] < errors[1] / 10, $"{errors[1]:e2} {errors[2]:e2}");

        CubicPath path = Circle(32);
        for (int i = 0; i <= 50; i++)
        {
            (Vector3 point, Vector3 tangent) = path.At(path.Length * i / 50);
            Assert.Equal(20, point.Length, tolerance: 2e-5);
            Assert.Equal(0, Vector3.Dot(point, tangent) / 20, tolerance: 2e-4);
            Assert.Equal(1, tangent.Length, tolerance: 1e-14);
        }
    }

    [Fact, Trait("basis", "law")]
    public void Length_along_the_path_is_the_length_of_its_chords_in_the_limit() => Arches.Sample(seed =>
    {
        CubicPath path = Random(seed);
        const int pieces = 400;
        double step = path.Length / pieces;
        for (int i = 0; i < pieces; i++)
        {
            (Vector3 from, Vector3 tangent) = path.At(i * step);
            (Vector3 to, _) = path.At((i + 1) * step);

            // Chord and arc differ by κ²h³/24: 5e-4 of a step of 0.1 mm where the radius is as small as 1 mm.
            Assert.Equal(step, (to - from).Length, tolerance: 1e-3 * step);
            Assert.True(Vector3.Dot(tangent, to - from) > 0.9 * step);
        }
    }, iter: 30);

    [Fact, Trait("basis", "law")]
    public void It_runs_through_its_knots_and_straight_beyond_its_ends() => Arches.Sample(seed =>
    {
        ImmutableArray<Vector3> points = Points(seed);
        CubicPath path = CubicPath.ThroughPoints(points);

        for (int i = 0; i < points.Length; i++)
            Assert.Equal(0, (path.At(path.LengthAt(i)).Point - points[i]).Length, tolerance: 1e-9);

        (Vector3 end, Vector3 tangent) = path.At(path.Length);
        (Vector3 beyond, Vector3 same) = path.At(path.Length + 3);
        Assert.Equal(0, (end + tangent * 3 - beyond).Length, tolerance: 1e-9);
        Assert.Equal(0, (tangent - same).Length, tolerance: 1e-9);
        Assert.Equal(0, (path.At(-2).Point - (points[0] - path.At(0).Tangent * 2)).Length, tolerance: 1e-9);
    }, iter: 100);

    [Fact, Trait("basis", "law")]
    public void A_plane_across_it_is_crossed_where_it_was_put() => Arches.Sample(seed =>
    {
        CubicPath path = Random(seed);
        double at = path.Length * (0.02 + 0.96 * new Random(seed).NextDouble());
        (Vector3 point, Vector3 tangent) = path.At(at);
        Vector3 aslant = (tangent + new Vector3(0.1, -0.2, 0.3)).Unit();

        Assert.Equal(at, path.Crossing(point, aslant, at + 0.7), tolerance: 1e-9);
        Assert.Equal(at, path.Crossing(point, aslant, at - 0.7), tolerance: 1e-9);
    }, iter: 100);

    [Fact, Trait("basis", "law")]
    public void Beside_a_point_of_it_that_point_is_the_nearest() => Arches.Sample(seed =>
    {
        CubicPath path = Random(seed);
        double at = path.Length * (0.02 + 0.96 * new Random(seed).NextDouble());
        (Vector3 point, Vector3 tangent) = path.At(at);
        Vector3 aside = Vector3.Cross(tangent, new Vector3(0.3, 0.4, 0.8)).Unit() * 0.4;

        Assert.Equal(at, path.Nearest(point + aside), tolerance: 1e-6);
    }, iter: 100);

    [Fact, Trait("basis", "law")]
    public void With_tangents_given_it_takes_them_and_keeps_an_even_pace()
    {
        Vector3[] points = [new(0, 0, 0), new(5, 1, 0), new(9, 4, 1)];
        Vector3[] tangents = [new(1, 0, 0), new Vector3(2, 1, 0).Unit(), new Vector3(1, 1, 1).Unit()];

        CubicPath path = CubicPath.WithTangents(points, tangents);

        for (int i = 0; i < 3; i++)
        {
            (Vector3 point, Vector3 tangent) = path.At(path.LengthAt(i));
            Assert.Equal(0, (point - points[i]).Length, tolerance: 1e-12);
            Assert.Equal(0, (tangent - tangents[i]).Length, tolerance: 1e-9);
        }
    }

    private static readonly Gen<int> Arches = Gen.Int[0, int.MaxValue];

    private static CubicPath Circle(int pieces) => CubicPath.ThroughPoints(
        [.. Enumerable.Range(0, pieces + 1).Select(i => Math.PI / 2 * i / pieces)
            .Select(t => new Vector3(20 * Math.Cos(t), 20 * Math.Sin(t), 0))]);

    private static CubicPath Random(int seed) => CubicPath.ThroughPoints(Points(seed));

    // Eight points about 5 mm apart whose direction turns gently at random.
    private static ImmutableArray<Vector3> Points(int seed)
    {
        var random = new Random(seed);
        double Draw() => 2 * random.NextDouble() - 1;
        var points = ImmutableArray.CreateBuilder<Vector3>();
        Vector3 at = default;
        Vector3 direction = new(1, 0, 0);
        for (int i = 0; i < 8; i++)
        {
            points.Add(at);
            direction = (direction + new Vector3(Draw(), Draw(), Draw()) * 0.4).Unit();
            at += direction * (5 + 2 * Draw());
        }

        return points.ToImmutable();
    }

    private static Vector3 Cubic(double t) => new(t, 1 - 2 * t + t * t * t, 3 * t * t - 0.5 * t * t * t);

    private static Vector3 CubicSlope(double t) => new(1, -2 + 3 * t * t, 6 * t - 1.5 * t * t);
}
