using Xunit;

namespace Archwright.Tests.Published;

/// <summary>Cross-section stiffness numbers: bending stiffness of a sharp-edged section relative to a 0.004 in round
/// one of the same alloy. C. J. Burstone, "Variable-modulus orthodontics", Am. J. Orthod. 80 (1981) 1–16. How we have
/// them: computed from the definition by a separate program, to 0.01; the table itself was not seen, and agrees where
/// remembered.</summary>
internal static class CrossSectionNumbers
{
    /// <summary>Diameter [0.001 in], number.</summary>
    public static TheoryData<double, double> Round => new()
    {
        { 8, 16.00 },
        { 9, 25.63 },
        { 10, 39.06 },
        { 12, 81.00 },
        { 14, 150.06 },
        { 16, 256.00 },
        { 17.5, 366.36 },
        { 18, 410.06 },
        { 20, 625.00 },
        { 22, 915.06 },
        { 30, 3164.06 },
        { 36, 6561.00 },
    };

    /// <summary>Thickness, width [0.001 in], number of the second order (up and down), of the first (in and
    /// out).</summary>
    public static TheoryData<double, double, double, double> Rectangular => new()
    {
        { 14, 25, 454.92, 1450.63 },
        { 16, 16, 434.60, 434.60 },
        { 16, 22, 597.57, 1129.79 },
        { 17, 17, 553.87, 553.87 },
        { 17, 22, 716.77, 1200.40 },
        { 17, 25, 814.51, 1761.48 },
        { 18, 18, 696.14, 696.14 },
        { 18, 22, 850.84, 1271.01 },
        { 18, 25, 966.87, 1865.10 },
        { 19, 25, 1137.13, 1968.71 },
        { 20, 20, 1061.03, 1061.03 },
        { 20, 25, 1326.29, 2072.33 },
        { 21, 25, 1535.35, 2175.95 },
        { 21.5, 28, 1845.37, 3129.84 },
    };
}
