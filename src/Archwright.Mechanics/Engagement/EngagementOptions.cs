namespace Archwright.Mechanics.Engagement;

/// <summary>How hard the solver is to try.</summary>
public sealed record EngagementOptions
{
    /// <summary>The usual settings.</summary>
    public static EngagementOptions Default { get; } = new();

    /// <summary>Elements in a usual gap between two slots (6 mm); longer gaps get more, in proportion. More is finer;
    /// <c>docs/theory/rod.md</c> has the table of error against unknowns.</summary>
    public int ElementsPerGap { get; init; } = 4;

    /// <summary>Elements along the width of a slot.</summary>
    public int ElementsPerSlot { get; init; } = 4;

    /// <summary>Largest number of Newton iterations of one engagement before it is given up.</summary>
    public int MostIterations { get; init; } = 600;

    /// <summary>The number ρ of the augmented Lagrangian, relative to its usual value. The result does not depend on
    /// it.</summary>
    public double ContactNumber { get; init; } = 1;

    /// <summary>Whether an engagement may start from a guessed shape in the displaced slots. Otherwise it follows the
    /// path from the rest shape, as wires with memory must.</summary>
    public bool StartFromGuess { get; init; } = true;
}
