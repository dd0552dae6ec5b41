using System.Collections.Immutable;
using Archwright.Exchange.Json;

namespace Archwright.Exchange.CaseFiles;

/// <summary>The keys of case files: the contract, in the order in which they are written.</summary>
internal static class CaseKeys
{
    public static readonly KeySet Case = new(
        "a case", "",
        ["format", "title", "arch", "temperature_degC", "soft_tissue", "wire", "slots", "absent", "then", "visit"]);

    public static readonly KeySet TwistCase = new(
        "a twist case", "",
        ["format", "wire", "slot_height_mm", "slot_depth_mm", "edge_gap_mm", "compliance_deg_per_N_mm",
            "twists_deg"]);

    public static readonly KeySet BendCase = new(
        "a bend case", "", ["format", "wire", "span_mm", "temperature_degC", "path"]);

    public static readonly KeySet BendMove = new("a move of the indenter", "bendMove", ["to_mm", "read_mm"]);

    public static readonly KeySet BendWarming = new("a change of temperature", "bendWarming", ["temperature_degC"]);

    public static readonly KeySet Wire = new("a wire", "wire", ["catalogue", "alloy", "section", "rest", "ends"]);

    public static readonly KeySet CatalogueAlloy = new("an alloy of the catalogue", "alloyOfCatalogue", ["catalogue"]);

    public static readonly KeySet LinearElastic = new(
        "a linear-elastic alloy", "linearElastic", ["law", "young_MPa", "poisson"]);

    public static readonly KeySet ElasticPlastic = new(
        "an elastic-plastic alloy", "elasticPlastic", ["law", "young_MPa", "poisson", "yield_MPa", "hardening_MPa"]);

    public static readonly KeySet Superelastic = new(
        "a superelastic alloy", "superelastic",
        ["law", "poisson", "reference_temperature_degC", "young_austenite_MPa", "young_martensite_MPa",
            "transformation_strain", "forward_start_MPa", "forward_finish_MPa", "reverse_start_MPa",
            "reverse_finish_MPa", "clausius_clapeyron_MPa_per_K", "asymmetry_alpha"]);

    public static readonly KeySet Round = new("a round section", "roundSection", ["shape", "diameter_mm"]);

    public static readonly KeySet Rectangular = new(
        "a rectangular section", "rectangularSection", ["shape", "thickness_mm", "width_mm", "edge_radius_mm"]);

    public static readonly KeySet PlainRest = new("a rest shape given by the slots", "plainRest", ["shape"]);

    public static readonly KeySet PointsRest = new(
        "a rest shape given by points", "pointsRest", ["shape", "points_mm", "outward"]);

    public static readonly KeySet Slot = new(
        "a slot", "slot",
        ["tooth", "bonded", "width_mm", "height_mm", "depth_mm", "tie", "friction", "contact", "hold", "rest",
            "offset", "actual"]);

    public static readonly KeySet AbsentTooth = new("an absent tooth", "absentTooth", ["tooth", "why"]);

    public static readonly KeySet Frame = new("a frame", "frame", ["centre_mm", "along", "outward"]);

    public static readonly KeySet Offset = new(
        "an offset", "offset",
        ["labial_mm", "occlusal_mm", "mesial_mm", "rotation_deg", "tip_deg", "torque_deg"]);

    public static readonly KeySet ClosedTie = new("a closed tie", "closedTie", ["kind", "holds_N"]);

    public static readonly KeySet SeatingTie = new(
        "a steel or spring tie", "seatingTie", ["kind", "force_N", "stiffness_N_per_mm", "holds_N"]);

    public static readonly KeySet ElasticTie = new(
        "an elastic tie", "elasticTie", ["kind", "force_N", "stiffness_N_per_mm", "lost_in_3_weeks", "holds_N"]);

    public static readonly KeySet PartialTie = new("a partial tie", "partialTie", ["kind", "reach_mm", "holds_N"]);

    public static readonly KeySet NoTie = new("a slot that is not tied", "noTie", ["kind"]);

    public static readonly KeySet Step = new("a step", "step", ["temperature_degC", "slots"]);

    public static readonly KeySet StepSlot = new("a slot of a step", "stepSlot", ["tooth", "offset", "actual"]);

    public static readonly KeySet Visit = new(
        "a visit", "visit",
        ["present", "slot_in", "working_wire", "stock", "alerts", "discomfort_0_10", "age_years"]);

    public static readonly KeySet PresentWire = new("the present wire", "presentWire", ["catalogue", "weeks"]);

    /// <summary>All objects that may stand in a case, for the test against the schema.</summary>
    public static readonly ImmutableArray<KeySet> OfCase =
    [
        Case, Wire, CatalogueAlloy, LinearElastic, ElasticPlastic, Superelastic, Round, Rectangular, PlainRest,
        PointsRest, Slot, Frame, Offset, ClosedTie, SeatingTie, ElasticTie, PartialTie, NoTie, Step, StepSlot, Visit,
        PresentWire, AbsentTooth,
    ];

    /// <summary>All objects that may stand in a twist case.</summary>
    public static readonly ImmutableArray<KeySet> OfTwistCase =
    [
        TwistCase, Wire, CatalogueAlloy, LinearElastic, ElasticPlastic, Superelastic, Round, Rectangular, PlainRest,
        PointsRest,
    ];

    /// <summary>All objects that may stand in a bend case.</summary>
    public static readonly ImmutableArray<KeySet> OfBendCase =
    [
        BendCase, BendMove, BendWarming, Wire, CatalogueAlloy, LinearElastic, ElasticPlastic, Superelastic, Round,
        Rectangular, PlainRest, PointsRest,
    ];
}
