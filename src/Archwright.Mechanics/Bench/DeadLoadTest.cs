using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Bench;

/// <summary>Where the free end of a wire under a dead load has gone.</summary>
/// <param name="Position">[mm]</param>
/// <param name="Tangent">Unit tangent of the centre line there.</param>
public readonly record struct LoadedTip(Vector3 Position, Vector3 Tangent);

/// <summary>A wire clamped at one end, and a force of constant size and direction at the other: the problems by which
/// the literature judges rods in large displacement and rotation. Elastic wires only.</summary>
public sealed record DeadLoadTest
{
    /// <summary>Section and alloy.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Points of the centre line at rest, from the clamp to the free end, two at least [mm].</summary>
    public required ImmutableArray<Vector3> Path { get; init; }

    /// <summary>Direction of the section's width, across the line.</summary>
    public required Vector3 Outward { get; init; }

    /// <summary>Elements along the wire.</summary>
    public int Elements { get; init; } = 64;

    /// <summary>Steps in which the load is laid on.</summary>
    public int Steps { get; init; } = 6;

    /// <summary>Torsion constant to compute with in place of the section's own; null for its own [mm⁴]. Codes of the
    /// literature took the polar moment, which is larger but for a round wire.</summary>
    public double? TorsionConstant { get; init; }

    /// <summary>Lays a force on the free end.</summary>
    /// <param name="load">[N]</param>
    /// <exception cref="ArgumentOutOfRangeException">There are no elements or steps, or too many.</exception>
    /// <exception cref="InvalidOperationException">There are fewer than two points, or no equilibrium was
    /// found.</exception>
    public LoadedTip Run(Vector3 load)
    {
        if (Path.Length < 2)
            throw new InvalidOperationException("A wire needs two points at least.");

        Require.Between(Elements, 1, 1000, "");
        Require.Between(Steps, 1, 1000, "");
        Equilibrium rod = Clamped();
        for (int step = 1; step <= Steps; step++)
        {
            rod.Loads = [new DeadLoad(Elements, load * ((double)step / Steps))];
            if (rod.SearchNear(200, loose: false, default) != SearchEnd.Converged)
                throw new InvalidOperationException($"No equilibrium at {step} of {Steps} parts of the load.");
        }

        return new LoadedTip(
            RodAssembly.Position(rod.State, Elements), RodAssembly.Slope(rod.State, Elements).Unit());
    }

    // By three rows for the place, two for the direction and one for the turn, as a clamped slot is.
    private Equilibrium Clamped()
    {
        var path = CubicPath.ThroughPoints([.. Path]);
        var rest = new RestCurve(path, [0, path.Length], [Outward, Outward]);
        Equilibrium rod = new(Elements + 1, 1, 8, 1, Law())
        {
            Rest = rest,

            // Rounding of a large EA does not let the residual get lower.
            ForceTolerance = 1e-6,
        };
        double[] s = [.. Enumerable.Range(0, Elements + 1).Select(i => path.Length * i / Elements)];
        rod.Mesh.Build(s, rest);
        for (int i = 0; i <= Elements; i++)
            Put(rod.State.Slice(8 * i, 8), rod.Mesh.RestPosition(i), rod.Mesh.RestTangent(i));

        Vector3 tangent = rod.Mesh.RestTangent(0);
        rod.Frames[0] = SlotFrame.Create(rod.Mesh.RestPosition(0), tangent, rest.OutwardAt(0, tangent));
        var row = new ContactRow { Upper = true, Lower = true };
        for (int axis = 0; axis < 3; axis++)
            rod.Contacts.Add(row with { Kind = RowKind.Place, Axis = axis });
        rod.Contacts.Add(row with { Kind = RowKind.Direction, Axis = 1 });
        rod.Contacts.Add(row with { Kind = RowKind.Direction, Axis = 2 });
        rod.Contacts.Add(row with { Kind = RowKind.Turn });
        return rod;
    }

    private ElasticRod Law()
    {
        Section section = Wire.Section;
        double young = Wire.Alloy.Young;
        double stretch = young * section.Area;
        return new ElasticRod(
            new ElasticSection(
                stretch, young * section.BendingOverThickness, young * section.BendingOverWidth,
                Wire.Alloy.Shear * (TorsionConstant ?? section.Torsion)),
            stretch);
    }

    private static void Put(Span<double> at, Vector3 point, Vector3 slope)
    {
        at[0] = point.X;
        at[1] = point.Y;
        at[2] = point.Z;
        at[3] = slope.X;
        at[4] = slope.Y;
        at[5] = slope.Z;
    }
}
