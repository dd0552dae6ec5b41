using Archwright.Dentition.Positions;

namespace Archwright.Dentition.Comparison;

/// <summary>Words, units and figures of the kinds of load.</summary>
public static class LoadKinds
{
    /// <summary>All kinds, in the order of the enumeration.</summary>
    public static IReadOnlyList<LoadKind> All { get; } = Enum.GetValues<LoadKind>();

    /// <summary>How a table writes the kind: "intrusion_force".</summary>
    public static string Code(this LoadKind kind) => kind switch
    {
        LoadKind.LabiolingualForce => "labiolingual_force",
        LoadKind.MesiodistalForce => "mesiodistal_force",
        LoadKind.ExtrusionForce => "extrusion_force",
        LoadKind.IntrusionForce => "intrusion_force",
        LoadKind.RotationMoment => "rotation_moment",
        LoadKind.TipMoment => "tip_moment",
        LoadKind.TorqueMoment => "torque_moment",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of load."),
    };

    /// <summary>In words: "intrusion".</summary>
    public static string Words(this LoadKind kind) => kind switch
    {
        LoadKind.LabiolingualForce => "labiolingual force",
        LoadKind.MesiodistalForce => "force along the arch",
        LoadKind.ExtrusionForce => "extrusion",
        LoadKind.IntrusionForce => "intrusion",
        LoadKind.RotationMoment => "rotation",
        LoadKind.TipMoment => "tip",
        LoadKind.TorqueMoment => "torque",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of load."),
    };

    /// <summary>"N" for forces, "N·mm" for moments.</summary>
    public static string Unit(this LoadKind kind) => kind.IsForce() ? "N" : "N·mm";

    /// <summary>True for forces, false for moments.</summary>
    public static bool IsForce(this LoadKind kind) => kind <= LoadKind.IntrusionForce;

    /// <summary>Reads the code of a kind.</summary>
    public static bool TryParse(string code, out LoadKind kind)
    {
        foreach (LoadKind one in All)
        {
            if (one.Code() == code)
            {
                kind = one;
                return true;
            }
        }

        kind = default;
        return false;
    }

    /// <summary>How much of this kind a load holds, zero or more [N or N·mm].</summary>
    public static double Of(this LoadKind kind, ClinicalLoad load) => kind switch
    {
        LoadKind.LabiolingualForce => Math.Abs(load.LabialForce),
        LoadKind.MesiodistalForce => Math.Abs(load.MesialForce),
        LoadKind.ExtrusionForce => Math.Max(0, load.OcclusalForce),
        LoadKind.IntrusionForce => Math.Max(0, -load.OcclusalForce),
        LoadKind.RotationMoment => Math.Abs(load.RotationMoment),
        LoadKind.TipMoment => Math.Abs(load.TipMoment),
        LoadKind.TorqueMoment => Math.Abs(load.TorqueMoment),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such kind of load."),
    };
}
