using System.Collections.Immutable;
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
        json.Raw("teeth_above_ceiling", Teeth(option.TeethAboveCeiling, arch));
        json.Number("max_strain", option.Engaged ? option.MaxStrain : null);
        json.Number("set_mm", option.Engaged ? option.Set : null);
        json.Number(
            "torque_play_deg",
            double.IsPositiveInfinity(option.TorquePlay) ? null : Angle.ToDegrees(option.TorquePlay));
        json.Text("sentence", option.Sentence);
        Working(json, option.Working, arch);
        json.Number("transformed_share", option.Engaged ? option.TransformedShare : null);
        json.Boolean("upper_bound", option.IsUpperBound);
        json.Lines("lasting", option.Lasting.Select(one => Lasting(one, arch)));
    }

    // Not asked for, or not found: null, and so is the list of teeth, since an empty one would say that none is above.
    private static void Working(JsonOut json, ForceFigures? working, Arrangement arch)
    {
        json.Number("working_force_N", working?.LargestForce);
        json.Text("working_force_tooth", working is null ? null : Label(arch, working.LargestForceSlot));
        json.Number("working_moment_N_mm", working?.LargestMoment);
        json.Raw("teeth_above_ceiling_working", working is null ? "null" : Teeth(working.TeethAboveCeiling, arch));
    }

    private static string Lasting(RemainingForce one, Arrangement arch) => JsonOut.OneLine(
        ("offset_left_share", JsonOut.Figure("offset_left_share", one.OffsetLeft)),
        ("force_N", JsonOut.Figure("force_N", one.Force)),
        ("largest_force_N", JsonOut.Figure("largest_force_N", one.LargestForce)),
        ("largest_force_tooth", JsonOut.Quoted(arch.Slots[one.LargestForceSlot].Label)));

    private static string Teeth(ImmutableArray<ToothAboveCeiling> above, Arrangement arch) =>
        "[" + string.Join(
            ", ", above.Select(t => t.Slot).Distinct().Select(slot => JsonOut.Quoted(arch.Slots[slot].Label)))
        + "]";

    private static string? Label(Arrangement arch, int slot) => slot < 0 ? null : arch.Slots[slot].Label;
}
