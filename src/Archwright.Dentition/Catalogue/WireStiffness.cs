using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;

namespace Archwright.Dentition.Catalogue;

/// <summary>What a wire is like before it meets a tooth: stiffness, elastic range, play. First elastic part of the
/// curve only; an alloy that transforms grows softer beyond it.</summary>
/// <remarks>Relative stiffness counts a 0.004 in round steel wire as 1, as in C. J. Burstone, "Variable-modulus
/// orthodontics", Am J Orthod 1981;80:1–16: stiffness number = material number × cross-section number (the
/// definition; found, its tables not seen). The steel is that of the catalogue.</remarks>
public sealed record WireStiffness
{
    /// <summary>Diameter of the wire that counts as 1 [mm].</summary>
    public const double BaseDiameter = 0.004 * Millimetres.PerInch;

    /// <summary>Nominal height of the smaller slot [mm].</summary>
    public const double Slot018 = 0.018 * Millimetres.PerInch;

    /// <summary>Nominal height of the larger slot [mm].</summary>
    public const double Slot022 = 0.022 * Millimetres.PerInch;

    private static readonly Section Base = Section.Round(BaseDiameter);

    private readonly CatalogueWire wire;

    private WireStiffness(CatalogueWire wire, CatalogueAlloy steel)
    {
        this.wire = wire;
        Section section = wire.Section;
        double young = wire.Wire.Alloy.Young;
        double shear = wire.Wire.Alloy.Shear;
        BendingUpDown = young * section.BendingOverThickness;
        BendingInOut = young * section.BendingOverWidth;
        Torsion = shear * section.Torsion;
        RelativeUpDown = BendingUpDown / (steel.Alloy.Young * Base.BendingOverThickness);
        RelativeInOut = BendingInOut / (steel.Alloy.Young * Base.BendingOverThickness);
        RelativeTorsion = Torsion / (steel.Alloy.Shear * Base.Torsion);
    }

    /// <summary>The figures of a wire of the catalogue, against the steel of the same catalogue.</summary>
    /// <exception cref="ArgumentException">The catalogue has no steel to compare with.</exception>
    public static WireStiffness Of(CatalogueWire wire, WireCatalogue? catalogue = null)
    {
        catalogue ??= WireCatalogue.Default;
        return catalogue.TryFindAlloy("ss", out CatalogueAlloy? steel)
            ? new WireStiffness(wire, steel)
            : throw new ArgumentException("The catalogue holds no stainless steel ('ss').", nameof(catalogue));
    }

    /// <summary>Cross-section number: a second moment of area over that of a 0.004 in round wire.</summary>
    /// <param name="secondMoment">[mm⁴]</param>
    public static double CrossSectionNumber(double secondMoment) => secondMoment / Base.BendingOverThickness;

    /// <summary>Bending stiffness against an occlusal step (second order) [N·mm²].</summary>
    public double BendingUpDown { get; }

    /// <summary>Bending stiffness against a labial step (first order) [N·mm²].</summary>
    public double BendingInOut { get; }

    /// <summary>Torsional stiffness [N·mm² per rad].</summary>
    public double Torsion { get; }

    /// <summary><see cref="BendingUpDown"/>, 0.004 in round steel = 1.</summary>
    public double RelativeUpDown { get; }

    /// <summary><see cref="BendingInOut"/>, 0.004 in round steel = 1.</summary>
    public double RelativeInOut { get; }

    /// <summary><see cref="Torsion"/>, 0.004 in round steel = 1.</summary>
    public double RelativeTorsion { get; }

    /// <summary>Tightest radius of its centre line, bent up or down, that is still elastic [mm].</summary>
    public double TightestRadiusUpDown => wire.Section.Thickness / 2 / wire.ElasticStrainLimit;

    /// <summary>Tightest radius of its centre line, bent in or out, that is still elastic [mm].</summary>
    public double TightestRadiusInOut => wire.Section.Width / 2 / wire.ElasticStrainLimit;

    /// <summary>Elastic range: deflection of the middle of a simple span, up or down, at which the elastic limit is
    /// reached [mm].</summary>
    /// <param name="span">Distance of the supports, 10 mm in the standard bending test (ISO 15841) [mm].</param>
    /// <remarks>With M = F L/4 and δ = F L³/(48 E I) the largest curvature is 12 δ/L², the largest strain half the
    /// thickness times that: δ = ε L²/(6 h). Small deflections: below about a tenth of the span.</remarks>
    public double ElasticRange(double span = 10) =>
        wire.ElasticStrainLimit * span * span / (6 * wire.Section.Thickness);

    /// <summary>Torque play, one way, in a slot [rad]; positive infinity when the wire never locks; null when it does
    /// not go in.</summary>
    /// <param name="slotHeight">Occlusogingival opening [mm].</param>
    public double? TorquePlay(double slotHeight) =>
        slotHeight >= wire.Section.Thickness ? wire.Section.TorquePlay(slotHeight) : null;
}
