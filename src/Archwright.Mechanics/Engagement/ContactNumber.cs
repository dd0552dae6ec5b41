namespace Archwright.Mechanics.Engagement;

/// <summary>The number ρ of the augmented Lagrangian.</summary>
internal static class ContactNumber
{
    /// <summary>Usual value [N/mm]: well above the wire's own stiffness between two edges of a slot (some 10³), well
    /// below what rounding would feel.</summary>
    public const double Usual = 2e5;

    /// <summary>Share of it while a wire with memory, far softer where it transforms or yields, looks for the walls it
    /// touches; found by trial to need the fewest iterations. With the walls held, errors of place shrink in each step
    /// by stiffness over ρ, and only the whole number makes that fast. The result does not depend on it.</summary>
    public const double WithMemory = 0.02;
}
