using Archwright.Mechanics.Numerics;

namespace Archwright.Cli.Pictures;

/// <summary>Parallel projection of the case on the paper, to scale.</summary>
/// <param name="Origin">Where the origin of the case falls [px].</param>
/// <param name="Scale">[px/mm]</param>
/// <param name="Right">Direction in the case that points right on the paper; unit vector.</param>
/// <param name="Up">Direction in the case that points up on the paper; unit vector.</param>
internal sealed record Projection(Spot Origin, double Scale, Vector3 Right, Vector3 Up)
{
    /// <summary>Direction in the case that points out of the paper, toward the reader.</summary>
    public Vector3 Toward { get; } = Vector3.Cross(Right, Up);

    /// <summary>Where a point of the case falls [px].</summary>
    public Spot At(Vector3 point) => Origin + Way(point);

    /// <summary>How a vector of the case looks [px].</summary>
    public Spot Way(Vector3 vector) => new(Scale * Vector3.Dot(vector, Right), -Scale * Vector3.Dot(vector, Up));

    /// <summary>Looking at the biting surfaces: upper teeth from below with the incisors at the top, lower teeth from
    /// above with the incisors at the bottom; the patient's right is at the reader's left in both.</summary>
    public static (Vector3 Right, Vector3 Up) Occlusal(ArchPicture picture) => picture.Side switch
    {
        PictureSide.Bench => Bench(picture, outward: true),
        _ => Occlusal(picture.Side == PictureSide.Upper),
    };

    /// <summary>The same for an arch.</summary>
    public static (Vector3 Right, Vector3 Up) Occlusal(bool isUpper) =>
        (new(-1, 0, 0), new(0, isUpper ? 1 : -1, 0));

    /// <summary>Looking at the patient's face; the patient's right is at the reader's left.</summary>
    public static (Vector3 Right, Vector3 Up) Frontal(ArchPicture picture) => picture.Side switch
    {
        PictureSide.Upper or PictureSide.Lower => (new(-1, 0, 0), new(0, 0, 1)),
        _ => Bench(picture, outward: false),
    };

    // On the bench: from the first slot to the last points right; outward, or away from the third axis, points up.
    private static (Vector3 Right, Vector3 Up) Bench(ArchPicture picture, bool outward)
    {
        Vector3 chord = picture.Teeth[^1].Rest.Centre - picture.Teeth[0].Rest.Centre;
        Vector3 right = chord.Length > 1e-9 ? chord.Unit() : picture.Teeth[0].Rest.Along;
        Vector3 sum = default;
        foreach (PictureTooth tooth in picture.Teeth)
            sum += outward ? tooth.Rest.Outward : -tooth.Rest.Third;

        Vector3 up = sum - Vector3.Dot(sum, right) * right;
        if (up.Length < 1e-6)
            up = Vector3.Cross(right, Math.Abs(right.Z) < 0.9 ? new(0, 0, 1) : new(0, 1, 0));
        return (right, up.Unit());
    }
}
