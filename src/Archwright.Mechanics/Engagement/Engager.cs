namespace Archwright.Mechanics.Engagement;

/// <summary>How hard the solver is to try.</summary>
public sealed record EngagementOptions
{
    /// <summary>The usual settings.</summary>
    public static EngagementOptions Default { get; } = new();

    /// <summary>Elements in the longest gap between two slots; more is finer.</summary>
    public int ElementsPerGap { get; init; } = 3;

    /// <summary>Largest number of Newton iterations of one engagement before it is given up.</summary>
    public int MostIterations { get; init; } = 400;
}

/// <summary>Engages one wire in one set of slots. Holds the workspace: one instance a thread.</summary>
public sealed class Engager
{
    /// <summary>Prepares the wire in its rest shape.</summary>
    /// <exception cref="ArgumentException">The arrangement is impossible: too many slots, slots that coincide or run
    /// backwards, a wire thicker than a slot is high or deep.</exception>
    public Engager(Arrangement arrangement, EngagementOptions? options = null)
    {
        Arrangement = arrangement;
        Options = options ?? EngagementOptions.Default;
    }

    /// <summary>What is engaged.</summary>
    public Arrangement Arrangement { get; private set; }

    /// <summary>How.</summary>
    public EngagementOptions Options { get; }

    /// <summary>Brings the wire from its rest shape into the slots.</summary>
    public EngagementResult Engage(CancellationToken cancellation = default) => throw new NotSupportedException("The engager is being written.");

    /// <summary>Goes on from the last converged state (history kept): slots move, or the temperature changes.</summary>
    public EngagementResult Apply(Step step, CancellationToken cancellation = default) => throw new NotSupportedException("The engager is being written.");

    /// <summary>Condensed tangent stiffness of the engaged wire at its slots: change of the load on the teeth (force, and
    /// moment about the moving slot centre) for small motions of the slots (shift, then turn), row-major 6n × 6n
    /// [N/mm, N/rad, N, N·mm/rad].</summary>
    public double[] TangentStiffness() => throw new NotSupportedException("The engager is being written.");
}
