using Archwright.Exchange.Json;

namespace Archwright.Exchange.CaseFiles;

/// <summary>Every figure of a case file with the limits outside which it must be a slip.</summary>
/// <remarks>Wires are made from 0.2 to 0.8 mm and slots 0.457 or 0.559 mm high (common practice, no source); the
/// limits leave room for bench models and catch inches (0.022), micrometres (559) and slips of the decimal
/// point.</remarks>
internal static class Quantities
{
    private const string Millimetres = "Give millimetres; 0.001 inch is 0.0254 mm.";

    public static readonly Quantity Temperature = new(
        "temperature", "°C", -5, 80, "Give degrees Celsius; a closed mouth has about 36, an iced drink about 5.");

    public static readonly Quantity Coordinate = new(
        "coordinate", "mm", -500, 500,
        "Give millimetres from the origin of the patient's frame; an arch is some 60 mm wide.");

    public static readonly Quantity Direction = new(
        "direction component", "", -1000, 1000, "Give a direction as three plain figures, for example [-0.6, 0.8, 0].");

    public static readonly Quantity Shift = new(
        "offset", "mm", -15, 15, "Give millimetres from the rest place; a crown is 5 to 11 mm wide.");

    public static readonly Quantity Turn = new("turn", "°", -90, 90, "Give degrees.");

    public static readonly Quantity SlotWidth = new("mesiodistal width", "mm", 0.5, 10, Millimetres);

    public static readonly Quantity SlotHeight = new(
        "height", "mm", 0.2, 2, Millimetres + " Nominal slots are 0.457 mm (0.018 in) and 0.559 mm (0.022 in).");

    public static readonly Quantity SlotDepth = new(
        "depth", "mm", 0.2, 3, Millimetres + " Slots are some 0.7 mm deep.");

    public static readonly Quantity Friction = new(
        "friction coefficient", "", 0, 2, "Give the coefficient as a plain figure; without friction it is 0.");

    public static readonly Quantity SoftTissue = new(
        "firmness of lips and cheeks", "", 0, 20,
        "Give how many times as firm as those of average people: 1 for those, 0 for none.");

    public static readonly Quantity Compliance = new(
        "compliance", "°/(N·mm)", 0, 20,
        "Give degrees of twist for each N·mm of torque; 0 is a rigid bracket, one rig had 0.555.");

    public static readonly Quantity Diameter = new("diameter", "mm", 0.05, 2, Millimetres);

    public static readonly Quantity Thickness = new("thickness", "mm", 0.05, 2, Millimetres);

    public static readonly Quantity WireWidth = new("width", "mm", 0.05, 2, Millimetres);

    public static readonly Quantity EdgeRadius = new("edge radius", "mm", 0, 1, Millimetres);

    public static readonly Quantity Young = new(
        "Young's modulus", "MPa", 100, 1e6, "Give megapascals; steel has about 180 000.");

    public static readonly Quantity Poisson = new("Poisson's ratio", "", 0, 0.5, "Metals have about 0.3.");

    public static readonly Quantity Yield = new(
        "yield strength", "MPa", 1, 1e4, "Give megapascals; steel wires have 1000 to 2500.");

    public static readonly Quantity Hardening = new("hardening modulus", "MPa", 0, 1e6, "Give megapascals; 0 is none.");

    public static readonly Quantity ReferenceTemperature = new(
        "reference temperature", "°C", -100, 150, "Give degrees Celsius.");

    public static readonly Quantity TransformationStrain = new(
        "transformation strain", "", 0.001, 0.2, "Give a plain share, not percent: 0.045 for 4.5 %.");

    public static readonly Quantity ForwardStress = new(
        "forward transformation stress", "MPa", 1, 1e4, "Give megapascals at the reference temperature.");

    public static readonly Quantity ReverseStress = new(
        "reverse transformation stress", "MPa", -1e4, 1e4, "Give megapascals at the reference temperature.");

    public static readonly Quantity ClausiusClapeyron = new(
        "Clausius–Clapeyron slope", "MPa/K", 0, 50, "Nickel-titanium has about 6.");

    public static readonly Quantity Asymmetry = new("asymmetry", "", -0.9, 0.9, "Without asymmetry it is 0.");

    public static readonly Quantity SeatingForce = new(
        "seating force of the tie", "N", 0, 100, "Give newtons; 1 N is 102 gf.");

    public static readonly Quantity TieStiffness = new(
        "stiffness of the tie", "N/mm", 0, 1e5, "Give newtons a millimetre.");

    public static readonly Quantity TieLoss = new(
        "loss of the tie", "", 0, 0.95, "Give the share of its pull that it loses in three weeks, as in 0.56.");

    public static readonly Quantity TieReach = new("reach of the tie", "mm", 0, 20, "Give millimetres.");

    public static readonly Quantity TieHolds = new(
        "force that the tie holds", "N", 0.001, 1e6, "Give newtons, or leave the key out when it is not known.");

    public static readonly Quantity Weeks = new("time in the mouth", "weeks", 0, 520, "Give weeks.");

    public static readonly Quantity Discomfort = new(
        "discomfort", "", 0, 10, "Give a figure on the scale from 0 to 10.");

    public static readonly Quantity Age = new("age", "years", 0, 120, "Give years.");

    public static readonly Quantity EdgeGap = new("gap between the inner edges", "mm", 0.2, 50, "Give millimetres.");

    public static readonly Quantity Twist = new(
        "twist", "°", -90, 90, "Give degrees; a wire turned by more stands across the slot.");

    public static readonly Quantity Span = new(
        "span", "mm", 4, 50, "Give the distance of the knife edges in millimetres; the standard has 10.");

    public static readonly Quantity Deflection = new(
        "deflection", "mm", 0, 20, "Give millimetres; the standard goes to 3.1.");
}
