namespace Archwright.Mechanics.Engagement;

/// <summary>The number ρ of the augmented Lagrangian.</summary>
internal static class ContactNumber
{
    /// <summary>Usual value [N/mm]: well above the wire's own stiffness between two edges of a slot (some 10³), well
    /// below what rounding would feel.</summary>
    public const double Usual = 2e5;
}
