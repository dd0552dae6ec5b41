namespace Archwright.Treatment.Support;

/// <summary>Cross-section of a root as an ellipse held all round by a thin layer.</summary>
internal static class RootSection
{
    private const int Points = 256;

    /// <summary>Square of the length σ that ties turning about the long axis to shifting: stiffness against turning
    /// over stiffness against a sideways shift [mm²].</summary>
    /// <param name="width">Mesiodistal width of the root [mm].</param>
    /// <param name="depth">Labiolingual depth [mm].</param>
    /// <remarks>
    /// A shift e moves the surface by e·n along its normal; a turn ω by ω(x n_y − y n_x). Both integrated round the
    /// ellipse with the normal and the cross stiffness of the layer; a round root is held by the layer's shear alone
    /// and turns easily, a flat one presses.
    /// </remarks>
    public static double TurningOverShifting(double width, double depth)
    {
        double a = width / 2;
        double b = depth / 2;
        double turning = 0;
        double shifting = 0;
        for (int i = 0; i < Points; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * (i + 0.5) / Points);
            double length = Math.Sqrt(a * a * sin * sin + b * b * cos * cos);
            double nx = b * cos / length;
            double ny = a * sin / length;
            double pressing = a * cos * ny - b * sin * nx;
            double sliding = a * cos * nx + b * sin * ny;
            turning += length * (Ligament.Normal * pressing * pressing + Ligament.Across * sliding * sliding);
            shifting += length * (Ligament.Normal + Ligament.Across) / 2;
        }

        return turning / shifting;
    }
}
