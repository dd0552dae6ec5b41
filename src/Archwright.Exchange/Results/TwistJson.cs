using Archwright.Dentition.Units;
using Archwright.Exchange.CaseFiles;
using Archwright.Exchange.Json;
using Archwright.Mechanics.Sections;

namespace Archwright.Exchange.Results;

/// <summary>Writes <c>archwright-twist/1</c>: torque against twist between two slots.</summary>
/// <remarks>Schema: <c>docs/schema/archwright-twist-1.schema.json</c>.</remarks>
public static class TwistJson
{
    /// <summary>The word of <c>format</c>.</summary>
    public const string Format = "archwright-twist/1";

    /// <summary>Writes a twist test to a stream, which is left open.</summary>
    /// <param name="test">What was tested.</param>
    /// <param name="torques">One a twist of the test, in order [N·mm].</param>
    /// <param name="stream">Where it goes.</param>
    /// <exception cref="ArgumentException">There is not one torque a twist.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A torque is not finite.</exception>
    public static void Write(TwistCase test, IReadOnlyList<double> torques, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(torques);
        if (torques.Count != test.TwistsDegrees.Length)
        {
            throw new ArgumentException(
                $"The test has {test.TwistsDegrees.Length} twists and {torques.Count} torques.", nameof(torques));
        }

        Section section = test.Wire.Section;
        double play = section.TorquePlay(test.SlotHeight);
        using var json = new JsonOut(stream, Format);
        json.Lines("readings", test.TwistsDegrees.Zip(torques, Reading));
        json.Number("play_deg", double.IsPositiveInfinity(play) ? null : Angle.ToDegrees(play));
        json.Number("compliance_deg_per_N_mm", test.ComplianceDegrees);
        json.Number("area_mm2", section.Area);
        json.Number("second_moment_over_thickness_mm4", section.BendingOverThickness);
        json.Number("second_moment_over_width_mm4", section.BendingOverWidth);
        json.Number("torsion_constant_mm4", section.Torsion);
        json.Finish();
    }

    private static string Reading(double twist, double torque) => JsonOut.OneLine(
        ("twist_deg", JsonOut.Figure("twist_deg", twist)), ("torque_N_mm", JsonOut.Figure("torque_N_mm", torque)));
}
