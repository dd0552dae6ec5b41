using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The catalogue for people.</summary>
internal static class WiresTable
{
    /// <summary>One line a wire.</summary>
    public static void WriteAll(Terminal terminal, IReadOnlyList<WireFigures> wires)
    {
        Table table = Layout.Table(
            ("wire", false), ("", false), ("bending\nocclusal", true), ("\nlabial", true), ("torsion\nN·mm²", true),
            ("range\nmm", true), ("play in\n0.018", true), ("play in\n0.022", true));
        foreach (WireFigures wire in wires)
        {
            table.AddRow(
                Cell(wire.Wire.Id), Cell(wire.Wire.Title), Cell(Relative(wire.RelativeOcclusal)),
                Cell(Relative(wire.RelativeLabial)), Cell(Three(wire.Torsional)),
                Cell(wire.ElasticRange.ToString("0.00", CultureInfo.InvariantCulture) + (Starred(wire) ? "*" : "")),
                Cell(Play(wire.Slots[0], wire)), Cell(Play(wire.Slots[1], wire)));
        }

        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, "bending: stiffness against an occlusal (up-down) and a labial (in-out) step, "
            + "in multiples of a round steel wire of 0.004 in. torsion: stiffness of twist. range: deflection in the "
            + $"middle of a free span of {WireFigures.Span:0} mm, up or down, at which the wire begins to stay bent. "
            + "play: twist each way before the wire locks in a slot of the stated height; real slots are often larger, "
            + "so real play is often more.");
        if (wires.Any(Starred))
        {
            Layout.Paragraph(terminal, "* alloys that transform: up to here their figures hold; beyond, the wire pushes "
                + "less than they say and still springs back.");
        }

        Layout.Paragraph(terminal, "Where the figures come from: archwright wires WIRE, as in archwright wires "
            + wires[0].Wire.Id);
    }

    /// <summary>One wire with the sources of its figures.</summary>
    public static void WriteOne(Terminal terminal, WireFigures wire)
    {
        var section = wire.Wire.Section;
        Layout.Heading(terminal, $"{wire.Wire.Id}  {wire.Wire.Title}");
        Layout.Gap(terminal);
        string size = section.IsRound
            ? $"round, {Length(section.Thickness)} mm"
            : $"{Length(section.Thickness)} mm high (occlusogingival) × {Length(section.Width)} mm deep (labiolingual), "
                + $"edges rounded by {Length(section.EdgeRadius)} mm";
        Table table = Layout.Table(("", false), ("", false));
        table.HideHeaders();
        table.AddRow(Cell("section"), Cell(size));
        table.AddRow(Cell("bending stiffness, occlusal"), Cell(Stiffness(wire.BendingOcclusal, wire.RelativeOcclusal)));
        table.AddRow(Cell("bending stiffness, labial"), Cell(Stiffness(wire.BendingLabial, wire.RelativeLabial)));
        table.AddRow(Cell("torsional stiffness"), Cell($"{Three(wire.Torsional)} N·mm²"));
        table.AddRow(Cell("elastic range"), Cell(Range(wire)));
        foreach (SlotFit slot in wire.Slots)
        {
            string name = $"play in a {slot.SlotInches.ToString("0.000", CultureInfo.InvariantCulture)} in slot";
            table.AddRow(Cell(name), Cell(PlayInWords(slot, wire)));
        }

        table.AddRow(Cell("nickel"), Cell(wire.Wire.Alloy.ContainsNickel
            ? $"about {Three(wire.Wire.Alloy.Nickel.Value)} % by weight"
            : "none"));
        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        WriteSources(terminal, wire.Wire);
    }

    private static void WriteSources(Terminal terminal, CatalogueWire wire)
    {
        Layout.Heading(terminal, "Where the figures come from");
        foreach ((string name, Sourced figure) in Sources(wire))
        {
            string spread = figure.Spread.Length > 0 ? $"; range {figure.Spread}" : "";
            string unit = figure.Unit == "1" ? "" : " " + figure.Unit;
            Layout.Paragraph(terminal, $"{name}: {Four(figure.Value)}{unit}{spread}");
            Layout.Paragraph(terminal, figure.Source, "    ");
            Layout.Paragraph(terminal, figure.How, "    ", Layout.Quiet);
        }
    }

    /// <summary>The figures of a wire that were taken from somewhere, by name.</summary>
    internal static IEnumerable<(string Name, Sourced Figure)> Sources(CatalogueWire wire)
    {
        yield return ("stated thickness", wire.StatedThickness);
        yield return ("Young's modulus", wire.Alloy.Young);
        if (wire.Alloy.Poisson is { } poisson)
            yield return ("Poisson's ratio", poisson);
        if (wire.Alloy.Shear is { } shear)
            yield return ("effective modulus in torsion", shear);
        if (wire.Alloy.Yield is { } yield)
            yield return ("yield strength", yield);
        if (wire.Alloy.PlateauStart is { } plateau)
            yield return ("start of the loading plateau", plateau);
        yield return ("elastic limit (strain)", wire.Alloy.ElasticStrain);
        yield return ("nickel", wire.Alloy.Nickel);
    }

    private static bool Starred(WireFigures wire) => wire.Wire.InitialModulusOnly;

    private static string Range(WireFigures wire)
    {
        string range = $"{wire.ElasticRange.ToString("0.00", CultureInfo.InvariantCulture)} mm in the middle of a free "
            + $"span of {WireFigures.Span:0} mm (strain {Percent(wire.Wire.ElasticStrainLimit)})";
        return Starred(wire) ? range + ", where the plateau begins; beyond, it still springs back" : range;
    }

    /// <summary>A strain in per cent.</summary>
    internal static string Percent(double strain) =>
        (100 * strain).ToString("0.00", CultureInfo.InvariantCulture) + " %";

    private static string Stiffness(double value, double relative) =>
        $"{Three(value)} N·mm², {Relative(relative)} times a round steel wire of 0.004 in";

    private static string Play(SlotFit slot, WireFigures wire)
    {
        if (!slot.Fits)
            return "too thick";
        if (wire.Wire.Section.IsRound)
            return "–";

        return double.IsInfinity(slot.Play) ? "no lock" : Degrees(slot.Play);
    }

    private static string PlayInWords(SlotFit slot, WireFigures wire)
    {
        if (!slot.Fits)
            return "too thick: it does not go in";
        if (wire.Wire.Section.IsRound)
            return "round: it goes in, and never torques";

        return double.IsInfinity(slot.Play)
            ? "it turns freely all round and never torques"
            : $"{Degrees(slot.Play)} each way";
    }

    private static string Degrees(double radians) =>
        Angle.ToDegrees(radians).ToString("0.0", CultureInfo.InvariantCulture) + "°";

    private static string Relative(double value) => value >= 100
        ? value.ToString("0", CultureInfo.InvariantCulture)
        : value.ToString("0.0", CultureInfo.InvariantCulture);

    private static string Length(double millimetres) => millimetres.ToString("0.000", CultureInfo.InvariantCulture);

    // Three significant digits, never with an exponent.
    private static string Three(double value) => Significant(value, 3);

    private static string Four(double value) => Significant(value, 6);

    private static string Significant(double value, int digits)
    {
        if (value == 0)
            return "0";

        int decimals = Math.Max(0, digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
        return Math.Round(value, Math.Min(decimals, 12)).ToString("0." + new string('#', decimals),
            CultureInfo.InvariantCulture);
    }

    private static Text Cell(string text) => new(text);
}
