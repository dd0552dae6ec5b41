using Archwright.Exchange.Json;
using Archwright.Mechanics.Bench;

namespace Archwright.Exchange.Results;

/// <summary>Writes <c>archwright-bend/1</c>: force against deflection of a three-point bend.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-bend-1.schema.json</c>.</remarks>
public static class BendJson
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-bend/1";

    /// <summary>Writes a bend to a stream, which is left open.</summary>
    /// <param name="bend">What it gave.</param>
    /// <param name="stream">Where it goes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A force is not finite.</exception>
    public static void Write(BendResult bend, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(bend);
        using var json = new JsonOut(stream, Format);
        json.Lines("readings", bend.Readings.Select(Reading));
        json.Number("force_at_top_N", bend.ForceAtTop);
        json.Number("residual_mm", bend.Residual);
        json.Finish();
    }

    private static string Reading(BendPoint point) => JsonOut.OneLine(
        ("deflection_mm", JsonOut.Figure("deflection_mm", point.Deflection)),
        ("temperature_degC", JsonOut.Figure("temperature_degC", point.Temperature)),
        ("force_N", JsonOut.Figure("force_N", point.Force)));
}
