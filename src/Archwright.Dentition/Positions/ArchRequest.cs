using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>What an arch is to be built from.</summary>
public sealed record ArchRequest
{
    /// <summary>Which arch.</summary>
    public required Jaw Jaw { get; init; }

    /// <summary>Which nominal slot, the same on all teeth.</summary>
    public required SlotSize Slot { get; init; }

    /// <summary>A wire of the catalogue, as "niti-014".</summary>
    public required string WireId { get; init; }

    /// <summary>How the wire is tied, on all teeth but those of <see cref="Ties"/>.</summary>
    public Tie Tie { get; init; } = Tie.Closed();

    /// <summary>Teeth that are tied otherwise.</summary>
    public ImmutableDictionary<ToothNumber, Tie> Ties { get; init; } = ImmutableDictionary<ToothNumber, Tie>.Empty;

    /// <summary>How the wire's ends are held.</summary>
    public WireEnds Ends { get; init; }

    /// <summary>Whether the wire runs to the second molars.</summary>
    public bool SecondMolars { get; init; } = true;

    /// <summary>Crowns without a bracket: they hold no wire, touch their neighbours and count in what is measured.
    /// </summary>
    public ImmutableHashSet<ToothNumber> Unbonded { get; init; } = [];

    /// <summary>Teeth that are not there: extracted, unerupted, missing. Their place stays open.</summary>
    public ImmutableHashSet<ToothNumber> Without { get; init; } = [];

    /// <summary>The five contact displacements of the front teeth, from the patient's right to the left [mm]; empty
    /// for none. See the remarks of <see cref="ArchBuilder"/> for what is made of them.</summary>
    public ImmutableArray<double> Contacts { get; init; } = [];

    /// <summary>How teeth are off, on top of <see cref="Contacts"/>.</summary>
    public ImmutableDictionary<ToothNumber, ClinicalOffset> Positions { get; init; } =
        ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty;

    /// <summary>Measured tip and torque of crowns; against <see cref="Prescription"/> they give further
    /// offsets.</summary>
    public ImmutableDictionary<ToothNumber, CrownAngles> Crowns { get; init; } =
        ImmutableDictionary<ToothNumber, CrownAngles>.Empty;

    /// <summary>The angles built into the slots; used with <see cref="Crowns"/> alone.</summary>
    public Prescription Prescription { get; init; } = Prescription.Default;

    /// <summary>Curve through the crown centres; null for the default of the jaw.</summary>
    public ArchForm? Form { get; init; }

    /// <summary>Temperature of the wire [°C].</summary>
    public double Temperature { get; init; } = 36;
}
