using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;
using Archwright.Web.Words;

namespace Archwright.Web.Leaflets;

/// <summary>A wire cut across, in its slot, as it is drawn: all at one scale.</summary>
/// <param name="Slot">The slot, open to the right, as a path [mm].</param>
/// <param name="Wire">The wire's outline, as a path [mm]; empty for a wire that the catalogue does not know.</param>
public sealed record WireSections(string Slot, string Wire)
{
    /// <summary>How many times as big as it is a section is drawn.</summary>
    public const int Times = 25;

    /// <summary>Width of the picture [mm].</summary>
    public const double Width = 1.1;

    /// <summary>Height of the picture [mm].</summary>
    public const double Height = 0.9;

    // Depth of a slot in the trade's usual brackets, 0.028 in. Common practice, no source.
    private const double DepthInches = 0.028;
    private const double Wall = 0.12;

    /// <summary>The picture of a wire in a slot.</summary>
    /// <param name="wireId">A wire.</param>
    /// <param name="slotCode">"018" or "022".</param>
    public static WireSections Of(string wireId, string slotCode)
    {
        double height = (slotCode == "018" ? 0.018 : 0.022) * Millimetres.PerInch;
        double depth = DepthInches * Millimetres.PerInch;
        double back = Wall;
        double top = (Height - height) / 2;
        string slot = Path(
            (back + depth, top - Wall), (0, top - Wall), (0, top + height + Wall), (back + depth, top + height + Wall),
            (back + depth, top + height), (back, top + height), (back, top), (back + depth, top));
        return new WireSections(
            slot,
            WireCatalogue.Default.TryFind(wireId, out CatalogueWire? wire) ? Outline(wire.Section, back) : "");
    }

    // The wire lies in the middle of the slot's height, against its back.
    private static string Outline(Section section, double back)
    {
        (double w, double h) = (section.Width, section.Thickness);
        double y = (Height - h) / 2;
        if (section.IsRound)
        {
            string r = Number(w / 2);
            return $"M{Number(back)} {Number(Height / 2)}a{r} {r} 0 1 0 {Number(w)} 0a{r} {r} 0 1 0 {Number(-w)} 0Z";
        }

        double edge = Math.Min(section.EdgeRadius, h / 3);
        string e = Number(edge);
        return $"M{Number(back + edge)} {Number(y)}H{Number(back + w - edge)}a{e} {e} 0 0 1 {e} {e}"
            + $"V{Number(y + h - edge)}a{e} {e} 0 0 1 -{e} {e}H{Number(back + edge)}a{e} {e} 0 0 1 -{e} -{e}"
            + $"V{Number(y + edge)}a{e} {e} 0 0 1 {e} -{e}Z";
    }

    private static string Path(params (double X, double Y)[] points) =>
        "M" + string.Join('L', points.Select(point => $"{Number(point.X)} {Number(point.Y)}")) + "Z";

    private static string Number(double value) => Figures.Fine(value);
}
