using System.Text.Json;
using Archwright.Cli.Arches;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Slots;

namespace Archwright.Cli.Tables;

/// <summary>The indices of a case for programs: <c>archwright-arch/1</c>.</summary>
internal static class ArchJson
{
    /// <summary>Writes the document and a line end.</summary>
    public static void Write(Stream stream, string file, CaseFile arch, ArchFigures figures)
    {
        using (var json = new Utf8JsonWriter(stream, WiresJson.Style))
        {
            json.WriteStartObject();
            json.WriteString("format", "archwright-arch/1");
            json.WriteString("file", file);
            json.WriteString("title", arch.Title);
            json.WriteString("arch", arch.Jaw);
            json.WriteString("wire", arch.WireId);
            Figure(json, "irregularity_mm", figures.Irregularity?.Sum);
            json.WriteString("irregularity_class", figures.Irregularity?.Category);
            json.WriteStartArray("contact_displacements_mm");
            foreach (double displacement in figures.Irregularity?.Displacements ?? [])
                json.WriteNumberValue(WiresJson.Rounded(displacement));
            json.WriteEndArray();
            Figure(json, "intercanine_width_mm", figures.Intercanine);
            Figure(json, "intermolar_width_mm", figures.Intermolar);
            Figure(json, "crowding_mm", figures.Space?.Crowding);
            Figure(json, "spee_right_mm", figures.Spee?.Right);
            Figure(json, "spee_left_mm", figures.Spee?.Left);
            json.WriteStartArray("teeth");
            for (int i = 0; i < figures.Offsets.Length; i++)
                Tooth(json, arch.Arrangement.Slots[i], figures.Offsets[i]);
            json.WriteEndArray();
            json.WriteStartArray("absent");
            foreach (AbsentTooth one in arch.Absent)
            {
                json.WriteStartObject();
                json.WriteString("tooth", one.Tooth.ToIso());
                json.WriteString("why", one.Why);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("unsaid");
            foreach (ToothNumber tooth in arch.Unsaid)
                json.WriteStringValue(tooth.ToIso());
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        stream.Flush();
    }

    private static void Tooth(Utf8JsonWriter json, Slot slot, ClinicalOffset offset)
    {
        json.WriteStartObject();
        json.WriteString("tooth", slot.Label);
        json.WriteBoolean("bonded", slot.IsBonded);
        json.WriteNumber("labial_mm", WiresJson.Rounded(offset.Labial));
        json.WriteNumber("occlusal_mm", WiresJson.Rounded(offset.Occlusal));
        json.WriteNumber("mesial_mm", WiresJson.Rounded(offset.Mesial));
        json.WriteNumber("rotation_deg", WiresJson.Rounded(Angle.ToDegrees(offset.Rotation)));
        json.WriteNumber("tip_deg", WiresJson.Rounded(Angle.ToDegrees(offset.Tip)));
        json.WriteNumber("torque_deg", WiresJson.Rounded(Angle.ToDegrees(offset.Torque)));
        json.WriteEndObject();
    }

    private static void Figure(Utf8JsonWriter json, string key, double? value)
    {
        if (value is { } some)
            json.WriteNumber(key, WiresJson.Rounded(some));
        else
            json.WriteNull(key);
    }
}
