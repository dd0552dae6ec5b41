using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>A plane curve from the patient's right to the left on which random slots rest.</summary>
internal sealed class ArchCurve
{
    private readonly Func<double, Vector3> _at;
    private readonly double[] _parameter;
    private readonly double[] _length;
    private readonly double _shift;

    private ArchCurve(Func<double, Vector3> at, double from, double to, double places)
    {
        const int steps = 2000;
        _at = at;
        _parameter = new double[steps + 1];
        _length = new double[steps + 1];
        for (int i = 0; i <= steps; i++)
        {
            _parameter[i] = from + (to - from) * i / steps;
            if (i > 0)
                _length[i] = _length[i - 1] + (at(_parameter[i]) - at(_parameter[i - 1])).Length;
        }

        _shift = (_length[^1] - places) / 2;
    }

    /// <summary>A straight line along the negative x axis.</summary>
    public static ArchCurve Line(double places) => new(t => new Vector3(-t, 0, 0), -20, places + 20, places);

    /// <summary>A parabola or half an ellipse around the mouth, on which the row of slots lies in the middle.</summary>
    /// <param name="places">Length from the first slot to the last [mm].</param>
    /// <param name="depth">Depth of the arch by half of its width.</param>
    /// <param name="parabola">Or an ellipse.</param>
    public static ArchCurve Around(double places, double depth, bool parabola)
    {
        // As large as a mouth at least: half a width of 20 mm; wider where the row of slots with its free ends is
        // longer.
        double half = 20;
        ArchCurve curve = Sized(half, places, depth, parabola);
        while (curve._shift < 10)
            curve = Sized(half *= 1.1, places, depth, parabola);

        return curve;
    }

    /// <summary>Point and unit tangent at a length from the first slot [mm].</summary>
    public (Vector3 Point, Vector3 Tangent) At(double s)
    {
        double wanted = s + _shift;
        int i = Array.BinarySearch(_length, wanted);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, _length.Length - 2);
        double u = (wanted - _length[i]) / (_length[i + 1] - _length[i]);
        double t = _parameter[i] + u * (_parameter[i + 1] - _parameter[i]);
        const double h = 1e-5;
        return (_at(t), (_at(t + h) - _at(t - h)).Unit());
    }

    private static ArchCurve Sized(double half, double places, double depth, bool parabola) => parabola
        ? new ArchCurve(t => new Vector3(-half * t, half * depth * (1 - t * t), 0), -1, 1, places)
        : new ArchCurve(
            t => new Vector3(half * Math.Cos(t), half * depth * Math.Sin(t), 0), 0, Math.PI, places);
}
