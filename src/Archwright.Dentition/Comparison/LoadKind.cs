namespace Archwright.Dentition.Comparison;

/// <summary>Kind of load on a tooth that has a ceiling of its own.</summary>
public enum LoadKind
{
    /// <summary>Force toward the lip or cheek, or toward the tongue [N].</summary>
    LabiolingualForce,

    /// <summary>Force along the arch [N].</summary>
    MesiodistalForce,

    /// <summary>Force toward the biting plane [N].</summary>
    ExtrusionForce,

    /// <summary>Force away from the biting plane [N].</summary>
    IntrusionForce,

    /// <summary>Moment that turns the tooth about its long axis [N·mm].</summary>
    RotationMoment,

    /// <summary>Moment that tips it along the arch [N·mm].</summary>
    TipMoment,

    /// <summary>Moment that moves crown and root labiolingually against each other [N·mm].</summary>
    TorqueMoment,
}
