using Archwright.Dentition.Comparison;
using Archwright.Dentition.Units;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Engagement;

namespace Archwright.Exchange.Results;

/// <summary>Writes <c>archwright-compare/1</c>: the wires in rank order.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-compare-1.schema.json</c>.</remarks>
public static class CompareJson
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-compare/1";

    /// <summary>Writes a comparison to a stream, which is left open.</summary>
    /// <param name="options">In rank order.</param>
    /// <param name="arch">The arch on which they were compared: it names the teeth.</param>
    /// <param name="stream">Where it goes.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not finite.</exception>
    public static void Write(IReadOnlyList<ComparedWire> options, Arrangement arch, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(arch);
        using var json = new JsonOut(stream, Format);
        json.Groups("options", options, (group, option) => Option(group, option, arch));
        json.Finish();
    }

    // What a wire that does not go in would do is not known: null, not zero.
    private static void Option(JsonOut json, ComparedWire option, Arrangement arch)
    {
        json.Text("wire", option.Wire.Id);
        json.Boolean("engaged", option.Engaged);
        json.Text("why_not", option.WhyNot);
        json.Number("largest_force_N", option.Engaged ? option.LargestForce : null);
        json.Text("largest_force_tooth", option.Engaged ? Label(arch, option.LargestForceSlot) : null);
        json.Number("largest_moment_N_mm", option.Engaged ? option.LargestMoment : null);
        json.Raw("teeth_above_ceiling", Teeth(option, arch));
        json.Number("max_strain", option.Engaged ? option.MaxStrain : null);
        json.Number("set_mm", option.Engaged ? option.Set : null);
        json.Number(
            "torque_play_deg",
            double.IsPositiveInfinity(option.TorquePlay) ? null : Angle.ToDegrees(option.TorquePlay));
        json.Text("sentence", option.Sentence);
    }

    private static string Teeth(ComparedWire option, Arrangement arch) =>
        "[" + string.Join(
            ", ",
            option.TeethAboveCeiling.Select(t => t.Slot).Distinct()
                .Select(slot => JsonOut.Quoted(arch.Slots[slot].Label)))
        + "]";

    private static string? Label(Arrangement arch, int slot) => slot < 0 ? null : arch.Slots[slot].Label;
}
