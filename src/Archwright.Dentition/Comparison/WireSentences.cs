using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;

namespace Archwright.Dentition.Comparison;

/// <summary>Says in one sentence what a clinician needs to know of a wire on an arch. Teeth are named in words with
/// their ISO number, so that no bare number can be read in another notation.</summary>
internal sealed class WireSentences(Arrangement arch, SentenceStyle style)
{
    private readonly bool hasTeeth = arch.Slots.Any(slot => ToothNumber.TryParse(slot.Label, out _));

    /// <summary>Sentences in newtons and ISO numbers.</summary>
    public WireSentences(Arrangement arch)
        : this(arch, SentenceStyle.Default)
    {
    }

    public static string CannotGoIn(string reason)
    {
        string plain = reason.Trim().TrimEnd('.');
        return plain.Length > 0
            ? $"Cannot go in: {char.ToLowerInvariant(plain[0])}{plain[1..]}."
            : "Cannot go in.";
    }

    public static string Newtons(double force) => force.ToString("0.00", CultureInfo.InvariantCulture) + " N";

    public string TooThick(CatalogueWire wire, int slot) =>
        $"the wire is {Millimetres(wire.Section.Thickness)} thick, the slot at {Place(slot)} only "
        + $"{Millimetres(arch.Slots[slot].Height)} high.";

    public string TooWide(CatalogueWire wire, int slot) =>
        $"the wire is {Millimetres(wire.Section.Width)} wide, the slot at {Place(slot)} only "
        + $"{Millimetres(arch.Slots[slot].Depth)} deep.";

    public string Engaged(ComparedWire wire)
    {
        string plain = wire.Verdict switch
        {
            WireVerdict.WithinLimits => WithinLimits(wire),
            WireVerdict.AboveCeiling => AboveCeiling(wire),
            WireVerdict.BendsForGood => BendsForGood(wire),
            _ => throw new ArgumentOutOfRangeException(nameof(wire), wire.Verdict, "Only engaged wires are told here."),
        };
        return plain + (wire.Wire.InitialModulusOnly && style.SaysTransforms ? Transforms(wire) : "") + ".";
    }

    private string WithinLimits(ComparedWire wire) =>
        (hasTeeth ? "Goes in everywhere and loads no tooth above its ceiling" : "Goes in everywhere")
        + $"; largest force {style.Force(wire.LargestForce)} on {Place(wire.LargestForceSlot)}";

    private string AboveCeiling(ComparedWire wire) => $"Goes in, but {Excess(wire)}{WhenWorking(wire)}";

    private static string WhenWorking(ComparedWire wire) => wire.Working?.CountAboveCeiling switch
    {
        null => "",
        0 => "; when working none is",
        1 => "; when working one still is",
        { } count => $"; when working {count} still are",
    };

    private string BendsForGood(ComparedWire wire)
    {
        string place = wire.MaxStrainNear >= 0 && wire.MaxStrainNear < arch.Slots.Length
            ? " near " + Place(wire.MaxStrainNear)
            : "";
        string also = wire.TeethAboveCeiling.IsEmpty ? "" : ", and " + Excess(wire);
        return $"Goes in, but would bend for good{place}: strain {Percent(wire.MaxStrain)}, elastic up to "
            + Percent(wire.StrainLimit) + Stays(wire) + also;
    }

    private static string Stays(ComparedWire wire) => wire.Set switch
    {
        null => "",
        < LeastSet => "; taken out, it springs back to within 0.05 mm",
        { } set => $"; taken out, it stays bent by {Hundredths(set)}",
    };

    // Below this set [mm] it is not worth a figure.
    private const double LeastSet = 0.05;

    private string Excess(ComparedWire wire)
    {
        int teeth = wire.TeethAboveCeiling.Select(one => one.Slot).Distinct().Count();
        ToothAboveCeiling worst = wire.TeethAboveCeiling.MaxBy(one => one.Ratio)!;
        Func<double, string> say = worst.Kind.IsForce() ? style.Force : style.Moment;
        string count = teeth == 1 ? "one tooth is" : $"{teeth} teeth are";
        return $"{count} above a ceiling, most {Place(worst.Slot)}: {worst.Kind.Words()} {say(worst.Figure)}, "
            + $"ceiling {say(worst.Ceiling)}";
    }

    private static string Transforms(ComparedWire wire)
    {
        double share = wire.Result?.TransformedShare ?? 0;
        if (share >= LeastShare)
        {
            return $"; up to {Math.Round(100 * share)} % of a section transforms, and there the force hardly grows "
                + "with the offset";
        }

        return wire.BeyondElasticRange && share == 0
            ? $"; at {Percent(wire.MaxStrain)} strain it is beyond its elastic range ({Percent(wire.StrainLimit)}), "
                + "the force is that of its initial modulus, and the real force is lower since it transforms"
            : "";
    }

    // Below this share [–] it is not worth a word.
    private const double LeastShare = 0.02;

    private string Place(int slot) => ToothNumber.TryParse(arch.Slots[slot].Label, out ToothNumber tooth)
        ? $"the {tooth.Name} ({tooth.Show(style.Notation)})"
        : $"slot {arch.Slots[slot].Label}";

    private static string Percent(double share) => (100 * share).ToString("0.00", CultureInfo.InvariantCulture) + " %";

    private static string Hundredths(double length) => length.ToString("0.00", CultureInfo.InvariantCulture) + " mm";

    private static string Millimetres(double length) => length.ToString("0.000", CultureInfo.InvariantCulture) + " mm";
}
