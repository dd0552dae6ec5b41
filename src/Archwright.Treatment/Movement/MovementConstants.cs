using Archwright.Dentition.Tables;

namespace Archwright.Treatment.Movement;

/// <summary>The constants of the movement law, each with its source.</summary>
/// <remarks>Fitted on experiments in which one tooth bore a known force. No alignment trial was used for any of them:
/// those are kept for checks.</remarks>
public static class MovementConstants
{
    private static readonly Lazy<Dictionary<string, Sourced>> Rows = new(() =>
        Table.Embedded(typeof(MovementConstants).Assembly, "Movement/movement.csv")
            .ToDictionary(row => row.Required("quantity"), row => row.Figure(), StringComparer.Ordinal));

    /// <summary>Speed at a stress of 1 kPa, a in v = a + b ln(s) [mm/day].</summary>
    public static Sourced SpeedAtOneKilopascal => Of("speed_at_one_kpa");

    /// <summary>Gain of speed when the stress grows e-fold, b in v = a + b ln(s) [mm/day].</summary>
    public static Sourced SpeedPerLogarithm => Of("speed_per_log_kpa");

    /// <summary>Stress below which speed is proportional to it [kPa].</summary>
    public static Sourced LeastStress => Of("least_stress");

    /// <summary>Stress above which speed does not rise [kPa].</summary>
    public static Sourced MostStress => Of("most_stress");

    /// <summary>How long a tooth stands still whose ligament is stressed beyond <see cref="MostStress"/>, mean person
    /// [d].</summary>
    public static Sourced Lag => Of("lag");

    /// <summary>Force over mean stress of a translated upper canine [mm²].</summary>
    public static Sourced CanineArea => Of("canine_area");

    /// <summary>Support area of that canine, by which other teeth are scaled [mm²].</summary>
    public static Sourced CanineSupport => Of("canine_support");

    /// <summary>Arm at which turning counts as moving, as a share of the distance from the centre of resistance to
    /// the edge or cusp.</summary>
    public static Sourced TurningArm => Of("turning_arm");

    /// <summary>Standard deviation of the logarithm of the rate, between people.</summary>
    public static Sourced SpreadBetweenPeople => Of("spread_between_people");

    /// <summary>Share of that variance that all teeth of a person have in common.</summary>
    public static Sourced SharedByTeethOfOnePerson => Of("shared_by_teeth_of_one_person");

    /// <summary>Rate of growing over rate of grown people.</summary>
    public static Sourced GrowingOverGrown => Of("growing_over_grown");

    /// <summary>Age at which somebody counts as grown [a].</summary>
    public static Sourced GrowingUntil => Of("growing_until");

    /// <summary>Factor on the rate of teeth that slide along a wire into a space.</summary>
    public static Sourced SpaceClosure => Of("space_closure");

    private static Sourced Of(string quantity) => Rows.Value.TryGetValue(quantity, out Sourced? figure)
        ? figure
        : throw new TableException($"Movement/movement.csv has no '{quantity}'. Add the row.");
}
