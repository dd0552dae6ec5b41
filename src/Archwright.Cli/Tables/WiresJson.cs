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
        Indented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, IReadOnlyList<WireFigures> wires)
    {
        using (var json = new Utf8JsonWriter(stream, Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-wires/1");
            json.WriteStartArray("wires");
            foreach (WireFigures wire in wires)
                WriteWire(json, wire);
            json.WriteEndArray();
            json.WriteStartArray("alloys");
            foreach (CatalogueAlloy alloy in wires.Select(wire => wire.Wire.Alloy).Distinct())
                WriteAlloy(json, alloy);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void WriteWire(Utf8JsonWriter json, WireFigures wire)
    {
        Section section = wire.Wire.Section;
        json.WriteStartObject();
        json.WriteString("wire", wire.Wire.Id);
        json.WriteString("title", wire.Wire.Title);
        json.WriteString("alloy", wire.Wire.Alloy.Id);
        json.WriteString("shape", section.IsRound ? "round" : "rectangular");
        json.WriteNumber("thickness_mm", Rounded(section.Thickness));
        json.WriteNumber("width_mm", Rounded(section.Width));
        json.WriteNumber("edge_radius_mm", Rounded(section.EdgeRadius));
        json.WriteNumber("bending_stiffness_occlusal_N_mm2", Rounded(wire.BendingOcclusal));
        json.WriteNumber("bending_stiffness_labial_N_mm2", Rounded(wire.BendingLabial));
        json.WriteNumber("relative_bending_occlusal", Rounded(wire.RelativeOcclusal));
        json.WriteNumber("relative_bending_labial", Rounded(wire.RelativeLabial));
        json.WriteNumber("torsional_stiffness_N_mm2", Rounded(wire.Torsional));
        json.WriteNumber("elastic_range_mm", Rounded(wire.ElasticRange));
        json.WriteNumber("elastic_range_span_mm", WireFigures.Span);
        json.WriteNumber("elastic_strain_limit", Rounded(wire.Wire.ElasticStrainLimit));
        json.WriteBoolean("initial_modulus_only", wire.Wire.InitialModulusOnly);
        json.WriteBoolean("contains_nickel", wire.Wire.Alloy.ContainsNickel);
        json.WriteStartArray("slots");
        foreach (SlotFit slot in wire.Slots)
            WriteSlot(json, slot);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteSlot(Utf8JsonWriter json, SlotFit slot)
    {
        json.WriteStartObject();
        json.WriteNumber("slot_in", slot.SlotInches);
        json.WriteBoolean("fits", slot.Fits);
        if (double.IsFinite(slot.Play))
            json.WriteNumber("torque_play_deg", Rounded(Angle.ToDegrees(slot.Play)));
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

    // Ten significant digits: more is noise of the last operations, and would differ between machines.
    private static double Rounded(double value)
    {
        if (value == 0 || !double.IsFinite(value))
            return value;

        return double.Parse(value.ToString("G10", System.Globalization.CultureInfo.InvariantCulture),
            System.Globalization.CultureInfo.InvariantCulture);
    }
}
