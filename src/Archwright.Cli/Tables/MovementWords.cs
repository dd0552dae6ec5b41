using Archwright.Treatment.Movement;

namespace Archwright.Cli.Tables;

/// <summary>Kinds of movement in words.</summary>
internal static class MovementWords
{
    /// <summary>For people.</summary>
    public static string Of(MovementKind kind) => kind switch
    {
        MovementKind.None => "rests",
        MovementKind.Tipping => "tips",
        MovementKind.ControlledTipping => "tips about its apex",
        MovementKind.Bodily => "moves bodily",
        MovementKind.Root => "root moves",
        MovementKind.Rotation => "rotates",
        MovementKind.Extrusion => "extrudes",
        MovementKind.Intrusion => "intrudes",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such movement."),
    };

    /// <summary>For programs.</summary>
    public static string Key(MovementKind kind) => kind switch
    {
        MovementKind.None => "none",
        MovementKind.Tipping => "tipping",
        MovementKind.ControlledTipping => "controlled-tipping",
        MovementKind.Bodily => "bodily",
        MovementKind.Root => "root",
        MovementKind.Rotation => "rotation",
        MovementKind.Extrusion => "extrusion",
        MovementKind.Intrusion => "intrusion",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such movement."),
    };
}
