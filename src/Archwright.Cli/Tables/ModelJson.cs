using System.Text.Json;
using Archwright.Treatment.Decisions;

namespace Archwright.Cli.Tables;

/// <summary>Writes what the figures of a visit or a ladder rest on, as far as it is chosen.</summary>
internal static class ModelJson
{
    /// <summary>Writes the members <c>friction</c> and <c>soft_tissue</c>.</summary>
    public static void Write(Utf8JsonWriter json, ArchToday arch)
    {
        if (arch.Friction is { Coefficient: null } byAlloy)
            json.WriteString("friction", byAlloy.Word);
        else
            json.WriteNumber("friction", arch.MostFriction);
        json.WriteNumber("soft_tissue", arch.SoftTissue.Factor);
    }
}
