using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Engagement;

namespace Archwright.Dentition.Comparison;

/// <summary>A tooth that bears more than its ceiling.</summary>
/// <param name="Slot">Index of the slot.</param>
/// <param name="Kind">Kind of load.</param>
/// <param name="Figure">What it bears [N or N·mm].</param>
/// <param name="Ceiling">What the practice allows [N or N·mm].</param>
public sealed record ToothAboveCeiling(int Slot, LoadKind Kind, double Figure, double Ceiling)
{
    /// <summary>Figure over ceiling, above one.</summary>
    public double Ratio => Figure / Ceiling;
}

/// <summary>What one wire would do on an arch, and what to think of it.</summary>
public sealed record ComparedWire
{
    /// <summary>The wire.</summary>
    public required CatalogueWire Wire { get; init; }

    /// <summary>True when it can be engaged in every slot that is to hold it.</summary>
    public required bool Engaged { get; init; }

    /// <summary>Why it cannot be engaged; null when it can.</summary>
    public string? WhyNot { get; init; }

    /// <summary>Where it stands among the others, best first.</summary>
    public required WireVerdict Verdict { get; init; }

    /// <summary>Largest force on a tooth [N]; zero when not engaged.</summary>
    public double LargestForce { get; init; }

    /// <summary>Index of the slot that bears it; −1 when not engaged.</summary>
    public int LargestForceSlot { get; init; } = -1;

    /// <summary>Largest moment on a tooth, about its slot's centre [N·mm]; zero when not engaged.</summary>
    public double LargestMoment { get; init; }

    /// <summary>Index of the slot that bears it; −1 when not engaged.</summary>
    public int LargestMomentSlot { get; init; } = -1;

    /// <summary>Teeth above a ceiling, by slot and kind; a tooth may be named for several kinds.</summary>
    public ImmutableArray<ToothAboveCeiling> TeethAboveCeiling { get; init; } = [];

    /// <summary>Largest share of a ceiling that is used, on any tooth in any kind; above one when over.</summary>
    public double LargestShareOfCeiling { get; init; }

    /// <summary>Largest fibre strain; zero when not engaged.</summary>
    public double MaxStrain { get; init; }

    /// <summary>Index of the slot nearest to it; −1 when not engaged.</summary>
    public int MaxStrainNear { get; init; } = -1;

    /// <summary>Strain up to which the wire is elastic; for alloys that transform, where the plateau
    /// begins.</summary>
    public required double StrainLimit { get; init; }

    /// <summary>True when the strain is above the limit: the wire bends for good, or begins to transform.</summary>
    public bool BeyondElasticRange => MaxStrain > StrainLimit;

    /// <summary>Permanent set after release at the temperature of the arch [mm]: zero for a wire that stays within its
    /// elastic range; null where it is not known (not engaged, or engaged as if it were elastic without limit, when a
    /// set shows only as a strain above the limit).</summary>
    public double? Set { get; init; }

    /// <summary>The force figures of the working state: once every displaced tooth has come
    /// <see cref="Engager.Relief"/> of its way. Null where they were not asked for or not found.</summary>
    public ForceFigures? Working { get; init; }

    /// <summary>What it pushes with as the teeth come in, from the whole offset downward; only what was found. Empty
    /// where it was not asked for.</summary>
    public ImmutableArray<RemainingForce> Lasting { get; init; } = [];

    /// <summary>True where the figures come from the whole law of the alloy (plateau, yielding); false where they are
    /// those of its elastic modulus.</summary>
    public bool IsWholeLaw { get; init; }

    /// <summary>True where the forces are too high: it leaves its elastic range, and they are those of a wire that does
    /// not.</summary>
    public bool IsUpperBound => Engaged && BeyondElasticRange && !IsWholeLaw;

    /// <summary>Largest share of a section that is transformed; zero for alloys that do not transform.</summary>
    public double TransformedShare => Result?.TransformedShare ?? 0;

    /// <summary>Largest torque play, one way, in a slot that is to hold the wire [rad]; positive infinity when it
    /// never locks; zero when it is too thick to go in.</summary>
    public required double TorquePlay { get; init; }

    /// <summary>One plain sentence for the clinician.</summary>
    public required string Sentence { get; init; }

    /// <summary>The engagement itself; null when the wire was not tried because it is too thick.</summary>
    public EngagementResult? Result { get; init; }
}
