using Archwright.Mechanics.Numerics;

namespace Archwright.Treatment.Movement;

/// <summary>Six numbers of a tooth in the axes of its slot at its centre of resistance: force and moment, or shift
/// and turn.</summary>
/// <param name="Linear">Force [N] or shift [mm].</param>
/// <param name="Angular">Moment [N·mm] or turn [rad].</param>
internal readonly record struct Six(Vector3 Linear, Vector3 Angular)
{
    public bool IsFinite => Linear.IsFinite && Angular.IsFinite;

    public static Six operator +(Six a, Six b) => new(a.Linear + b.Linear, a.Angular + b.Angular);

    public static Six operator -(Six a, Six b) => new(a.Linear - b.Linear, a.Angular - b.Angular);

    public static Six operator *(Six a, double b) => new(a.Linear * b, a.Angular * b);

    /// <summary>Component by component.</summary>
    public double this[int i] => i switch
    {
        0 => Linear.X,
        1 => Linear.Y,
        2 => Linear.Z,
        3 => Angular.X,
        4 => Angular.Y,
        _ => Angular.Z,
    };
}
