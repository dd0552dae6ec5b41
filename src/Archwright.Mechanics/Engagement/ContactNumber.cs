namespace Archwright.Mechanics.Engagement;

/// <summary>The number ρ of the augmented Lagrangian.</summary>
internal static class ContactNumber
{
    /// <summary>Usual value [N/mm]: well above the wire's own stiffness between two edges of a slot (some 10³), well
    /// below what rounding would feel.</summary>
    public const double Usual = 2e5;

    /// <summary>Value for wires with memory [N/mm], which are far softer where they transform or yield; found by trial
    /// to need the fewest iterations. The result does not depend on it.</summary>
    public const double WithMemory = 4e3;
}
