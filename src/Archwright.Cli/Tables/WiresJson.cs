using System.Text.Encodings.Web;
using System.Text.Json;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Units;
using Archwright.Mechanics.Sections;

namespace Archwright.Cli.Tables;

/// <summary>The catalogue for programs: <c>archwright-wires/1</c>.</summary>
internal static class WiresJson
{
    /// <summary>How every document is written.</summary>
    public static JsonWriterOptions Style { get; } = new()
    {
        Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, IReadOnlyList<CatalogueWire> wires)
    {
        using (var json = new Utf8JsonWriter(stream, Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-wires/1");
            json.WriteStartArray("wires");
            foreach (CatalogueWire wire in wires)
                WriteWire(json, wire);
            json.WriteEndArray();
            json.WriteStartArray("alloys");
            foreach (CatalogueAlloy alloy in wires.Select(wire => wire.Alloy).Distinct())
                WriteAlloy(json, alloy);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void WriteWire(Utf8JsonWriter json, CatalogueWire wire)
    {
        Section section = wire.Section;
        WireStiffness stiffness = WireStiffness.Of(wire);
        json.WriteStartObject();
        json.WriteString("wire", wire.Id);
        json.WriteString("title", wire.Title);
        json.WriteString("alloy", wire.Alloy.Id);
        json.WriteString("shape", section.IsRound ? "round" : "rectangular");
        json.WriteNumber("thickness_mm", Rounded(section.Thickness));
        json.WriteNumber("width_mm", Rounded(section.Width));
        json.WriteNumber("edge_radius_mm", Rounded(section.EdgeRadius));
        (double softest, double stiffest) = wire.Tolerance.Stiffness(section.Thickness);
        json.WriteNumber("softest_by_size", Rounded(softest));
        json.WriteNumber("stiffest_by_size", Rounded(stiffest));
        json.WriteNumber("bending_stiffness_occlusal_N_mm2", Rounded(stiffness.BendingUpDown));
        json.WriteNumber("bending_stiffness_labial_N_mm2", Rounded(stiffness.BendingInOut));
        json.WriteNumber("relative_bending_occlusal", Rounded(stiffness.RelativeUpDown));
        json.WriteNumber("relative_bending_labial", Rounded(stiffness.RelativeInOut));
        json.WriteNumber("torsional_stiffness_N_mm2", Rounded(stiffness.Torsion));
        json.WriteNumber("elastic_range_mm", Rounded(stiffness.ElasticRange(WiresTable.Span)));
        json.WriteNumber("elastic_range_span_mm", WiresTable.Span);
        json.WriteNumber("elastic_strain_limit", Rounded(wire.ElasticStrainLimit));
        json.WriteBoolean("initial_modulus_only", wire.InitialModulusOnly);
        json.WriteBoolean("contains_nickel", wire.Alloy.ContainsNickel);
        json.WriteStartArray("slots");
        foreach (double slot in WiresTable.UsualSlots)
            WriteSlot(json, slot, stiffness.TorquePlay(slot));
        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The play is null where the wire does not go in, and where it never locks.
    private static void WriteSlot(Utf8JsonWriter json, double height, double? play)
    {
        json.WriteStartObject();
        json.WriteNumber("height_mm", Rounded(height));
        json.WriteBoolean("fits", play is not null);
        json.WriteBoolean("locks", play is { } some && double.IsFinite(some));
        if (play is { } angle && double.IsFinite(angle))
            json.WriteNumber("torque_play_deg", Rounded(Angle.ToDegrees(angle)));
        else
            json.WriteNull("torque_play_deg");
        json.WriteEndObject();
    }

    private static void WriteAlloy(Utf8JsonWriter json, CatalogueAlloy alloy)
    {
        json.WriteStartObject();
        json.WriteString("alloy", alloy.Id);
        json.WriteString("title", alloy.Title);
        WriteFigure(json, "young", alloy.Young);
        WriteFigure(json, "poisson", alloy.Poisson);
        WriteFigure(json, "shear", alloy.Shear);
        WriteFigure(json, "yield", alloy.Yield);
        WriteFigure(json, "plateau_start", alloy.PlateauStart);
        WriteFigure(json, "elastic_strain", alloy.ElasticStrain);
        WriteFigure(json, "bending_yield", alloy.Plasticity?.Yield);
        WriteFigure(json, "hardening", alloy.Plasticity?.Hardening);
        WriteFigure(json, "austenite_finish", alloy.Transformation?.AusteniteFinish);
        WriteFigure(json, "clausius_clapeyron", alloy.Transformation?.ClausiusClapeyron);
        WriteFigure(json, "transformation_strain", alloy.Transformation?.TransformationStrain);
        WriteFigure(json, "young_martensite", alloy.Transformation?.YoungMartensite);
        WriteFigure(json, "forward_finish", alloy.Transformation?.ForwardFinish);
        WriteFigure(json, "reverse_start", alloy.Transformation?.ReverseStart);
        WriteFigure(json, "reverse_finish", alloy.Transformation?.ReverseFinish);
        WriteFigure(json, "asymmetry", alloy.Transformation?.Asymmetry);
        WriteFigure(json, "friction_dry", alloy.FrictionDry);
        WriteFigure(json, "friction_wet", alloy.FrictionWet);
        WriteFigure(json, "nickel", alloy.Nickel);
        json.WriteEndObject();
    }

    private static void WriteFigure(Utf8JsonWriter json, string name, Sourced? figure)
    {
        if (figure is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteNumber("value", figure.Value);
        json.WriteString("unit", figure.Unit);
        json.WriteString("spread", figure.Spread);
        json.WriteString("source", figure.Source);
        json.WriteString("how", figure.How);
        json.WriteEndObject();
    }

    /// <summary>Ten significant digits: more is noise of the last operations, and differs between machines.</summary>
    internal static double Rounded(double value)
    {
        if (value == 0 || !double.IsFinite(value))
            return value;

        return double.Parse(value.ToString("G10", System.Globalization.CultureInfo.InvariantCulture),
            System.Globalization.CultureInfo.InvariantCulture);
    }
}
