using System.Collections.Immutable;
using Archwright.Cli.Pictures;
using Archwright.Cli.Units;
using Archwright.Dentition.Outlines;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Tests.Pictures;

/// <summary>A picture made by hand: fourteen slots on a half-ellipse, one canine high, with invented forces. It tests
/// the drawing and nothing else.</summary>
internal static class SamplePicture
{
    private const double HalfWidth = 27;
    private const double Length = 45;

    private static readonly double[] Widths = [10, 10.5, 7, 7.2, 7.8, 6.8, 8.6];
    private static readonly double[] Depths = [10, 11, 9, 9, 8, 6.5, 7.2];
    private static readonly double[] Heights = [7, 7.5, 8, 8.5, 10, 9, 10.5];

    public static ArchPicture HighCanine(PictureSide side = PictureSide.Upper) => new()
    {
        Title = "Upper right canine 2 mm high",
        Subtitle = "niti-014 · nickel-titanium 0.014 in · slot 0.022 in",
        Side = side,
        Teeth = [.. Enumerable.Range(0, 14).Select(i => Tooth(i, side))],
        CentreLine = [.. Enumerable.Range(0, 140).Select(i => Line(i / 139.0))],
        WireWidth = 0.3556,
        WireThickness = 0.3556,
        Unit = ForceUnit.Centinewton,
        Findings = ["Largest force: 140 cN on 13.", "Above the ceiling: 13 (140 cN, ceiling 100 cN)."],
        Notes = ["A calculation, not a prescription: the treating clinician decides."],
    };

    private static PictureTooth Tooth(int i, PictureSide side)
    {
        bool right = i < 7;
        int kind = right ? i : 13 - i;
        double jaw = side == PictureSide.Lower ? -1 : 1;
        SlotFrame rest = FrameAt(Angles()[i]);
        bool high = i == 4;
        SlotFrame actual = high ? rest.Moved(-2 * jaw * rest.Third, new Vector3(0, 0, 0.15)) : rest;
        Vector3 force = i switch
        {
            4 => 1.4 * jaw * rest.Third - 0.3 * rest.Outward,
            3 => -0.8 * jaw * rest.Third + 0.2 * rest.Outward,
            5 => -0.75 * jaw * rest.Third + 0.3 * rest.Outward,
            _ => 0.02 * rest.Outward,
        };
        return new PictureTooth
        {
            Label = $"{(right ? jaw > 0 ? 1 : 4 : jaw > 0 ? 2 : 3)}{7 - kind}",
            Rest = rest,
            Actual = actual,
            SlotWidth = 3.2,
            SlotHeight = 0.559,
            SlotDepth = 0.711,
            Crown = new Crown(7 - kind, Widths[kind], Heights[kind], Depths[kind], 4.2, 1.1),
            Force = force,
            Labial = Vector3.Dot(force, rest.Outward),
            Occlusal = jaw * Vector3.Dot(force, rest.Third),
            Mesial = (right ? 1 : -1) * Vector3.Dot(force, rest.Along),
            IsAboveCeiling = high,
        };
    }

    // Angles at which the chords between neighbours are half the sum of their widths, from the midline outward.
    private static double[] Angles()
    {
        var angles = new double[14];
        double angle = 0;
        double before = 0;
        for (int kind = 6; kind >= 0; kind--)
        {
            double way = (before + Widths[kind]) / 2;
            angle = Walk(angle, way);
            before = Widths[kind];
            angles[kind] = Math.PI / 2 - angle;
            angles[13 - kind] = Math.PI / 2 + angle;
        }

        return angles;
    }

    private static double Walk(double angle, double way)
    {
        const double Step = 1e-4;
        for (double gone = 0; gone < way; angle += Step)
            gone += Step * Math.Sqrt(Math.Pow(HalfWidth * Math.Cos(angle), 2) + Math.Pow(Length * Math.Sin(angle), 2));
        return angle;
    }

    private static SlotFrame FrameAt(double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        var along = new Vector3(-HalfWidth * sin, Length * cos, 0);
        var outward = new Vector3(Length * cos, HalfWidth * sin, 0);
        return SlotFrame.Create(new Vector3(HalfWidth * cos, Length * sin, 0), along, outward);
    }

    private static Vector3 Line(double share)
    {
        double[] angles = Angles();
        double angle = angles[0] + share * (angles[13] - angles[0]);
        double bump = 1.6 * Math.Exp(-Math.Pow((angle - angles[4]) / 0.14, 2));
        return FrameAt(angle).Centre + new Vector3(0, 0, bump);
    }

    public static ImmutableArray<byte> Drawn(ArchPicture picture, string ending)
    {
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ending);
        try
        {
            PictureFile.Write(file, Sheet.Height, picture.Title, picture.Subtitle, c => Sheet.Draw(c, picture));
            return [.. File.ReadAllBytes(file)];
        }
        finally
        {
            File.Delete(file);
        }
    }
}
