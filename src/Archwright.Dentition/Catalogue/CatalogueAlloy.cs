using Archwright.Dentition.Tables;
using Archwright.Mechanics.Alloys;

namespace Archwright.Dentition.Catalogue;

/// <summary>A kind of wire alloy by its generic name, every figure with its source.</summary>
public sealed record CatalogueAlloy
{
    /// <summary>Short name: ss, cc, bti, mniti, niti, haniti, cuniti27, cuniti35, cuniti40 or ms.</summary>
    public required string Id { get; init; }

    /// <summary>Generic name in words.</summary>
    public required string Title { get; init; }

    /// <summary>Young's modulus of the first, elastic part of the bending curve [MPa]; of a stranded wire the
    /// effective one on its outer diameter.</summary>
    public required Sourced Young { get; init; }

    /// <summary>Poisson's ratio; null for stranded wire, whose torsion has a figure of its own.</summary>
    public Sourced? Poisson { get; init; }

    /// <summary>Effective modulus in torsion [MPa]; null where it follows from Poisson's ratio.</summary>
    public Sourced? Shear { get; init; }

    /// <summary>Yield strength, 0.1 % offset in tension [MPa]; null for alloys that transform before they yield, and
    /// for stranded wire.</summary>
    public Sourced? Yield { get; init; }

    /// <summary>How it yields in bending; null where <see cref="Yield"/> is.</summary>
    public PlasticFigures? Plasticity { get; init; }

    /// <summary>How it transforms; null for alloys that do not.</summary>
    public TransformationFigures? Transformation { get; init; }

    /// <summary>Stress at which the loading plateau begins at mouth temperature [MPa]; null for alloys without
    /// one.</summary>
    public Sourced? PlateauStart => Transformation?.ForwardStart;

    /// <summary>Largest fibre strain that is still elastic: yield over modulus; where the plateau begins for alloys
    /// that transform; for stranded wire counted at its outer diameter.</summary>
    public required Sourced ElasticStrain { get; init; }

    /// <summary>Coefficient of kinetic friction on a steel slot, dry.</summary>
    public required Sourced FrictionDry { get; init; }

    /// <summary>Coefficient of kinetic friction on a steel slot, in saliva.</summary>
    public required Sourced FrictionWet { get; init; }

    /// <summary>Share of nickel [% by weight].</summary>
    public required Sourced Nickel { get; init; }

    /// <summary>True for alloys that transform: the figures hold up to the plateau alone, and beyond it the wire
    /// pushes less than they say.</summary>
    public bool InitialModulusOnly => PlateauStart is not null;

    /// <summary>True when the alloy holds nickel at all, for patients who react to it.</summary>
    public bool ContainsNickel => Nickel.Value > 0;

    /// <summary>The law that the mechanics computes with.</summary>
    public required Alloy Alloy { get; init; }

    /// <summary>The whole law: with the plateau and its loop, or with yielding; as <see cref="Alloy"/> for alloys that
    /// have neither.</summary>
    public required Alloy WholeLaw { get; init; }
}
