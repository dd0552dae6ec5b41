namespace Archwright.Practice.Ladders;

/// <summary>What has changed since a ladder was computed.</summary>
public enum LadderChange
{
    /// <summary>Teeth were seen again, or stand elsewhere.</summary>
    Positions,

    /// <summary>Another wire is in place.</summary>
    Wire,

    /// <summary>Slot, bonded and absent teeth or the working wire.</summary>
    Appliance,

    /// <summary>Ties or ends.</summary>
    Ties,

    /// <summary>Alerts, age or discomfort.</summary>
    Patient,

    /// <summary>The practice keeps other wires.</summary>
    Stock,

    /// <summary>The policy by which a visit is judged.</summary>
    Policy,

    /// <summary>The program.</summary>
    Program,
}
