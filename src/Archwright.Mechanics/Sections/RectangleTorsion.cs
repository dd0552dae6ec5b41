namespace Archwright.Mechanics.Sections;

/// <summary>Saint-Venant torsion of rectangles with sharp or rounded edges.</summary>
internal static class RectangleTorsion
{
    // placeholder until the boundary solution below is written
    public static double Constant(double thickness, double width, double edgeRadius)
    {
        double a = Math.Max(thickness, width);
        double b = Math.Min(thickness, width);
        double sum = 0;
        for (int n = 1; n < 16; n += 2)
            sum += Math.Tanh(n * Math.PI * a / (2 * b)) / Math.Pow(n, 5);

        _ = edgeRadius;
        return a * b * b * b * (1.0 / 3 - 64 / Math.Pow(Math.PI, 5) * (b / a) * sum);
    }
}
