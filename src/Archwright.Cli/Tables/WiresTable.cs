using System.Globalization;
using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Bench;
using Spectre.Console;

namespace Archwright.Cli.Tables;

/// <summary>The catalogue for people.</summary>
internal static class WiresTable
{
    /// <summary>Span on which the elastic range is stated, that of the standard bending test [mm].</summary>
    public const double Span = 10;

    /// <summary>Columns of a screen that takes the whole table.</summary>
    private const int FullWidth = 115;

    /// <summary>Stated heights of the two usual slots [mm].</summary>
    public static IReadOnlyList<double> UsualSlots { get; } = [WireStiffness.Slot018, WireStiffness.Slot022];

    /// <summary>One line a wire.</summary>
    public static void WriteAll(Terminal terminal, IReadOnlyList<CatalogueWire> wires)
    {
        // A narrow screen does without the alloy, which the id says already.
        bool isWide = terminal.Width >= FullWidth;
        (string Heading, bool IsFigure)[] figures =
        [
            ("bending\nocclusal", true), ("bending\nlabial", true), ("torsion\nN·mm²", true), ("range\nmm", true),
            ("play in\n0.018", true), ("play in\n0.022", true),
        ];
        Table table = Layout.Table(
            isWide ? [("wire", false), ("alloy", false), .. figures] : [("wire", false), .. figures]);
        foreach (CatalogueWire wire in wires)
        {
            Text[] row = [.. Row(wire)];
            table.AddRow(isWide ? [Cell(wire.Id), Cell(wire.Alloy.Title), .. row] : [Cell(wire.Id), .. row]);
        }

        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, "bending: stiffness against an occlusal (up-down) and a labial (in-out) step, "
            + "in multiples of a round steel wire of 0.004 in. torsion: stiffness of twist. range: deflection in the "
            + $"middle of a free span of {Span:0} mm, up or down, at which the wire begins to stay bent. "
            + "play: twist each way before the wire locks in a slot of the stated height (free: it never does); "
            + "real slots are often larger, "
            + "so real play is often more.");
        if (wires.Any(wire => wire.InitialModulusOnly))
        {
            Layout.Paragraph(terminal, "* alloys that transform: up to here their figures hold; beyond, the wire "
                + "pushes less than they say and still springs back.");
        }

        Layout.Gap(terminal);
        AlloysTable.Write(terminal, wires.Select(wire => wire.Alloy).Distinct());
        Layout.Gap(terminal);
        Layout.Paragraph(terminal, "Where the figures come from: archwright wires WIRE, as in archwright wires "
            + wires[0].Id);
    }

    private static IEnumerable<Text> Row(CatalogueWire wire)
    {
        WireStiffness stiffness = WireStiffness.Of(wire);
        yield return Cell(Relative(stiffness.RelativeUpDown));
        yield return Cell(Relative(stiffness.RelativeInOut));
        yield return Cell(Three(stiffness.Torsion));
        yield return Cell(TwoDecimals(stiffness.ElasticRange(Span)) + (wire.InitialModulusOnly ? "*" : " "));
        foreach (double slot in UsualSlots)
            yield return Cell(Play(wire, stiffness.TorquePlay(slot)));
    }

    /// <summary>One wire with the sources of its figures.</summary>
    public static void WriteOne(Terminal terminal, CatalogueWire wire)
    {
        var section = wire.Section;
        WireStiffness stiffness = WireStiffness.Of(wire);
        Layout.Heading(terminal, $"{wire.Id}  {wire.Title}");
        Layout.Gap(terminal);
        string size = section.IsRound
            ? $"round, {Length(section.Thickness)} mm"
            : $"{Length(section.Thickness)} mm high × {Length(section.Width)} mm deep, edges rounded by "
                + $"{Length(section.EdgeRadius)} mm";
        Table table = Layout.Table(("", false), ("", false));
        table.HideHeaders();
        table.AddRow(Cell("section"), Cell(size));
        table.AddRow(
            Cell("bending stiffness, occlusal"), Cell(Times(stiffness.BendingUpDown, stiffness.RelativeUpDown)));
        table.AddRow(
            Cell("bending stiffness, labial"), Cell(Times(stiffness.BendingInOut, stiffness.RelativeInOut)));
        (double softest, double stiffest) = wire.Tolerance.Stiffness(section.Thickness);
        table.AddRow(Cell("bending, real sizes"), Cell(
            $"{Percent(softest - 1)} to +{Percent(stiffest - 1)} by the tolerance of size alone".Replace('-', '−')));
        table.AddRow(Cell("torsional stiffness"), Cell(Times(stiffness.Torsion, stiffness.RelativeTorsion)));
        table.AddRow(Cell("elastic range"), Cell(Range(wire, stiffness)));
        table.AddRow(Cell("standard bend, 36 °C"), Cell(StandardBend(wire)));
        table.AddRow(Cell("play in a 0.018 in slot"), Cell(PlayInWords(wire, stiffness.TorquePlay(UsualSlots[0]))));
        table.AddRow(Cell("play in a 0.022 in slot"), Cell(PlayInWords(wire, stiffness.TorquePlay(UsualSlots[1]))));
        table.AddRow(Cell("nickel"), Cell(wire.Alloy.ContainsNickel
            ? $"about {Three(wire.Alloy.Nickel.Value)} % by weight"
            : "none"));
        Layout.Write(terminal, table);
        Layout.Gap(terminal);
        WriteSources(terminal, wire);
    }

    // The force on the way in and on the way back says more of an alloy that transforms than its stiffness does.
    private static string StandardBend(CatalogueWire wire)
    {
        const double Top = 3.1, Read = 2, Mouth = 36;
        try
        {
            BendResult bend = BendTest.Run(
                wire.WholeWire, Span, Mouth, [BendStep.To(Top, Read), BendStep.To(0, Read)]);
            string left = bend.Residual > 0.005 ? $"; it stays bent by {TwoDecimals(bend.Residual)} mm" : "";
            string top = Top.ToString(CultureInfo.InvariantCulture);
            return $"at {Read:0} mm {Newtons(bend.Readings[0].Force)} on the way in, "
                + $"{Newtons(bend.Readings[^1].Force)} on the way back from {top} mm "
                + $"(three points, span {Span:0} mm, as in ISO 15841){left}";
        }
        catch (InvalidOperationException)
        {
            return "not found: the wire does not go that far";
        }
    }

    private static string Newtons(double force) => $"{Three(force)} N ({Three(100 * force)} cN)";

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
        yield return ("thinnest against stated", wire.Tolerance.Smallest);
        yield return ("thickest against stated", wire.Tolerance.Largest);
        yield return ("Young's modulus", wire.Alloy.Young);
        if (wire.Alloy.Poisson is { } poisson)
            yield return ("Poisson's ratio", poisson);
        if (wire.Alloy.Shear is { } shear)
            yield return ("effective modulus in torsion", shear);
        if (wire.Alloy.Yield is { } yield)
            yield return ("yield strength", yield);
        if (wire.Alloy.Plasticity is { } plastic)
        {
            if (plastic.Yield != wire.Alloy.Yield)
                yield return ("yield point in bending", plastic.Yield);
            yield return ("hardening beyond it", plastic.Hardening);
        }

        foreach ((string name, Sourced figure) in wire.Alloy.Transformation?.Named ?? [])
            yield return (name, figure);
        yield return ("elastic limit (strain)", wire.Alloy.ElasticStrain);
        yield return ("friction on steel, dry", wire.Alloy.FrictionDry);
        yield return ("friction on steel, in saliva", wire.Alloy.FrictionWet);
        yield return ("nickel", wire.Alloy.Nickel);
    }

    private static string Range(CatalogueWire wire, WireStiffness stiffness)
    {
        string range = $"{TwoDecimals(stiffness.ElasticRange(Span))} mm in the middle of a free span of {Span:0} mm "
            + $"(strain {Percent(wire.ElasticStrainLimit)})";
        return wire.InitialModulusOnly ? range + ", where the plateau begins; beyond, it still springs back" : range;
    }

    /// <summary>A strain in per cent.</summary>
    internal static string Percent(double strain) => TwoDecimals(100 * strain) + " %";

    private static string TwoDecimals(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Times(double value, double relative) =>
        $"{Three(value)} N·mm², {Relative(relative)} times that of a round steel wire of 0.004 in";

    private static string Play(CatalogueWire wire, double? play) => play switch
    {
        null => "too thick",
        _ when wire.Section.IsRound => "–",
        double.PositiveInfinity => "free",
        { } angle => Degrees(angle),
    };

    private static string PlayInWords(CatalogueWire wire, double? play) => play switch
    {
        null => "too thick: it does not go in",
        _ when wire.Section.IsRound => "round: it goes in, and never torques",
        double.PositiveInfinity => "it turns freely all round and never torques",
        { } angle => $"{Degrees(angle)} each way",
    };

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
