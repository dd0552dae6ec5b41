using Archwright.Dentition.Tables;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Dentition.Catalogue;

/// <summary>A wire that a practice can hold: alloy and stated section.</summary>
public sealed record CatalogueWire
{
    /// <summary>Alloy and size in thousandths of an inch: "ss-016", "ss-019x025", "ms-0175".</summary>
    public required string Id { get; init; }

    /// <summary>In words: "stainless steel 0.019 × 0.025 in".</summary>
    public required string Title { get; init; }

    /// <summary>What it is made of.</summary>
    public required CatalogueAlloy Alloy { get; init; }

    /// <summary>Thickness as stated, with its source [in].</summary>
    public required Sourced StatedThickness { get; init; }

    /// <summary>How far the real wire may be from the stated size.</summary>
    public required SizeTolerance Tolerance { get; init; }

    /// <summary>Outline and constants of the stated section [mm].</summary>
    public required Section Section { get; init; }

    /// <summary>Section and alloy as the mechanics wants them.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Section and alloy with its whole law: plateau, loop, yielding and history; see
    /// <see cref="CatalogueAlloy.WholeLaw"/>.</summary>
    public Wire WholeWire => Wire with { Alloy = Alloy.WholeLaw };

    /// <summary>Largest fibre strain that is still elastic; see <see cref="CatalogueAlloy.ElasticStrain"/>.</summary>
    public double ElasticStrainLimit => Alloy.ElasticStrain.Value;

    /// <summary>True when the figures hold up to the plateau alone; see
    /// <see cref="CatalogueAlloy.InitialModulusOnly"/>.</summary>
    public bool InitialModulusOnly => Alloy.InitialModulusOnly;
}
