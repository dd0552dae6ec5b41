using System.Collections.Immutable;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Ties;

/// <summary>Figures that a tie gets when a case names its kind alone.</summary>
/// <param name="Kind">Kind of tie.</param>
/// <param name="SeatingForce">Pull on a seated wire [N].</param>
/// <param name="Stiffness">Rise of the pull with lift [N/mm].</param>
/// <param name="Reach">Largest distance of the wire from the slot's centre [mm].</param>
/// <param name="Holds">Outward force that it holds [N]; infinite where no figure is known.</param>
/// <param name="Source">Where the figures come from, and how we have them.</param>
public sealed record TieDefault(
    TieKind Kind, double SeatingForce, double Stiffness, double Reach, double Holds, string Source);

/// <summary>The one table of figures of ties. A case that gives its own figures overrides them.</summary>
/// <remarks>Measured ties scatter widely (elastic ones fade over weeks), so a study of ties should give its own
/// figures. What a tie holds before it opens is not known to us for any kind: it is taken as without limit, and the
/// result reports the pull, so that a reader can judge.</remarks>
public static class TieDefaults
{
    /// <summary>Two limbs of ligature wire 0.254 mm (0.010 in) thick, about 4 mm long each, steel of
    /// 200 000 MPa: 2·E·A/l = 2 · 200 000 · 0.0507 / 4 ≈ 5000 N/mm stretched along themselves. Bent round the wings and
    /// twisted at the end they give way much more; 1000 N/mm is an order of magnitude, and stiff beside any
    /// wire.</summary>
    private const double SteelStiffness = 1000;

    /// <summary>All kinds, in the order of the case file's words.</summary>
    public static ImmutableArray<TieDefault> Table { get; } =
    [
        new(TieKind.Closed, 0, 0, 0, double.PositiveInfinity,
            "A passive lid does not press: Thorstenson & Kusy, Am J Orthod Dentofacial Orthop 120 (2001) 361-370, no "
            + "friction measured below the critical angle (found, summary). What it holds: not known."),
        new(TieKind.Steel, 2.94, SteelStiffness, 0, double.PositiveInfinity,
            "Force: held constant at 300 gf in the sliding tests of Kusy & Whitley, J Biomed Mater Res 2000 (found, "
            + "excerpt). Stiffness: computed, order of magnitude (two limbs of 0.010 in ligature wire, about 4 mm "
            + "long, softened by their bends)."),
        new(TieKind.Elastic, 2.0, 1.0, 0, double.PositiveInfinity,
            "Force: the low end of the ligation forces of 2 to 6 N in the tests of Thorstenson & Kusy 2001 (found, "
            + "summary), because an elastic tie fades over weeks and ranks below steel (Braz Oral Res 2017, ranks "
            + "of ties: found, abstract). Stiffness: common practice, no source; order of magnitude."),
        new(TieKind.Spring, 3.0, 3.0, 0, double.PositiveInfinity,
            "Force: computed from about 1 N·mm of torque that an active clip adds (Brauchli, Steineck & Wichelhaus, "
            + "Angle Orthod 82 (2012) 663-669: found), acting at some 0.3 mm from the wire's axis. Stiffness: common "
            + "practice, no source; order of magnitude."),
        new(TieKind.Partial, 0, 0, 2.0, double.PositiveInfinity,
            "Reach: common practice, no source; measure the thread and give reach_mm."),
        new(TieKind.None, 0, 0, 0, double.PositiveInfinity, "A wire that passes by is not held."),
    ];

    /// <summary>The figures of a kind.</summary>
    public static TieDefault Of(TieKind kind) => Table.First(row => row.Kind == kind);
}
