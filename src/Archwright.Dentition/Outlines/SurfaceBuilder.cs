using System.Collections.Immutable;

namespace Archwright.Dentition.Outlines;

/// <summary>Puts a surface together from rings of points that lie one above the other.</summary>
internal sealed class SurfaceBuilder(int around)
{
    private readonly ImmutableArray<float>.Builder points = ImmutableArray.CreateBuilder<float>();
    private readonly ImmutableArray<int>.Builder triangles = ImmutableArray.CreateBuilder<int>();

    /// <summary>Points of a ring.</summary>
    public int Around => around;

    private int Count => points.Count / 3;

    /// <summary>Adds rings, each joined to the one before, and closes the last one with a point.</summary>
    /// <param name="rings">How many.</param>
    /// <param name="at">The point of a ring at an angle [rad].</param>
    /// <param name="tip">The point that closes the last ring.</param>
    public void Close(int rings, Func<int, double, (double, double, double)> at, (double, double, double) tip)
    {
        int first = Count;
        for (int ring = 0; ring < rings; ring++)
        {
            for (int i = 0; i < around; i++)
                Add(at(ring, 2 * Math.PI * i / around));
        }

        for (int ring = 1; ring < rings; ring++)
        {
            for (int i = 0; i < around; i++)
                Quad(first + (ring - 1) * around, first + ring * around, i);
        }

        int end = Count;
        Add(tip);
        int last = first + (rings - 1) * around;
        for (int i = 0; i < around; i++)
            triangles.AddRange(last + i, last + (i + 1) % around, end);
    }

    /// <summary>The surface, in the frame of a slot.</summary>
    /// <param name="mesial">+1 where mesial is along the slot's axis, −1 against it.</param>
    /// <param name="occlusal">+1 where the biting plane lies along the slot's third axis, −1 against it.</param>
    /// <param name="towardBite">True when the rings run toward the biting plane, false when toward the apex.</param>
    public Surface Build(int mesial, int occlusal, bool towardBite)
    {
        ImmutableArray<float>.Builder turned = ImmutableArray.CreateBuilder<float>(points.Count);
        for (int i = 0; i < points.Count; i += 3)
            turned.AddRange(mesial * points[i], points[i + 1], occlusal * points[i + 2]);

        // Along, outward, third is right-handed as mesial, labial, occlusal is: each mirror turns the triangles round.
        bool flip = (mesial * occlusal < 0) == towardBite;
        ImmutableArray<int>.Builder faces = ImmutableArray.CreateBuilder<int>(triangles.Count);
        for (int i = 0; i < triangles.Count; i += 3)
        {
            faces.AddRange(
                triangles[i], triangles[flip ? i + 2 : i + 1], triangles[flip ? i + 1 : i + 2]);
        }

        return new Surface(turned.ToImmutable(), faces.ToImmutable());
    }

    private void Quad(int below, int above, int i)
    {
        int next = (i + 1) % around;
        triangles.AddRange(below + i, below + next, above + next, below + i, above + next, above + i);
    }

    private void Add((double Mesial, double Labial, double Occlusal) point) =>
        points.AddRange((float)point.Mesial, (float)point.Labial, (float)point.Occlusal);
}
