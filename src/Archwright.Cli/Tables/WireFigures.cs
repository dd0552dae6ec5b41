using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;

namespace Archwright.Cli.Tables;

/// <summary>How a wire sits in a slot of stated size.</summary>
/// <param name="SlotInches">Stated height of the slot [in].</param>
/// <param name="Fits">Whether it goes in at all.</param>
/// <param name="Play">Torque play each way [rad]; positive infinity when it never locks; NaN when it does not fit.</param>
internal sealed record SlotFit(double SlotInches, bool Fits, double Play);

/// <summary>The figures by which wires are compared without any arch.</summary>
/// <param name="Wire">The wire.</param>
/// <param name="BendingOcclusal">Bending stiffness EI against an occlusal step [N·mm²].</param>
/// <param name="BendingLabial">Bending stiffness EI against a labial step [N·mm²].</param>
/// <param name="RelativeOcclusal">The first over that of a 0.004 in round steel wire.</param>
/// <param name="RelativeLabial">The second over that of a 0.004 in round steel wire.</param>
/// <param name="Torsional">Torsional stiffness GJ [N·mm²].</param>
/// <param name="ElasticRange">See <see cref="Span"/> [mm].</param>
/// <param name="Slots">In the two usual slots.</param>
internal sealed record WireFigures(
    CatalogueWire Wire,
    double BendingOcclusal,
    double BendingLabial,
    double RelativeOcclusal,
    double RelativeLabial,
    double Torsional,
    double ElasticRange,
    IReadOnlyList<SlotFit> Slots)
{
    /// <summary>Span on which the elastic range is stated [mm].</summary>
    public const double Span = 10;

    /// <summary>Diameter of the steel wire that stiffnesses are relative to [in].</summary>
    public const double ReferenceInches = 0.004;

    private static readonly double[] UsualSlots = [0.018, 0.022];

    /// <summary>Works the figures out.</summary>
    /// <remarks>Elastic range: occlusal deflection in the middle of a simply supported span at which the outermost
    /// fibre reaches the elastic limit. A force P in the middle gives the moment PL/4 and the deflection PL³/(48EI);
    /// with the strain Mc/(EI), c half of the thickness, the deflection is strain·L²/(12c). Small deflections;
    /// beam theory, any textbook of strength of materials (from memory).</remarks>
    public static WireFigures Of(CatalogueWire wire, WireCatalogue catalogue)
    {
        Section section = wire.Section;
        double young = wire.Wire.Alloy.Young;
        double reference = Reference(catalogue);
        return new WireFigures(
            wire,
            young * section.BendingOverThickness,
            young * section.BendingOverWidth,
            young * section.BendingOverThickness / reference,
            young * section.BendingOverWidth / reference,
            wire.Wire.Alloy.Shear * section.Torsion,
            wire.ElasticStrainLimit * Span * Span / (12 * section.Thickness / 2),
            [.. UsualSlots.Select(slot => Fit(section, slot))]);
    }

    /// <summary>How a section sits in a slot.</summary>
    public static SlotFit Fit(Section section, double slotInches)
    {
        double height = Millimetres.FromInches(slotInches);
        return section.Thickness <= height
            ? new SlotFit(slotInches, true, section.TorquePlay(height))
            : new SlotFit(slotInches, false, double.NaN);
    }

    private static double Reference(WireCatalogue catalogue)
    {
        if (!catalogue.TryFindAlloy("ss", out CatalogueAlloy? steel))
            throw new InvalidOperationException("The catalogue holds no stainless steel.");

        return steel.Alloy.Young * Section.Round(Millimetres.FromInches(ReferenceInches)).BendingOverThickness;
    }
}
