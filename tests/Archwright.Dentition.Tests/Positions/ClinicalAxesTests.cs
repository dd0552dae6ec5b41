using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using CsCheck;

namespace Archwright.Dentition.Tests.Positions;

/// <summary>Signs of the clinical components, told by where a point of the tooth goes. The frames are set up by hand
/// from the patient's axes (+x right, +y anterior, +z superior), one for each quadrant: a front tooth seen from the
/// front, so that labial is +y, mesial is −x on the right and +x on the left, occlusal is −z above and +z below.
/// </summary>
public sealed class ClinicalAxesTests
{
    private const double Small = 1e-3;

    public static TheoryData<int> Quadrants => [13, 23, 33, 43];

    [Theory, MemberData(nameof(Quadrants)), Trait("basis", "law")]
    public void Shifts_go_where_the_words_say(int iso)
    {
        (ClinicalAxes axes, SlotFrame rest, Vector3 mesial, Vector3 occlusal) = Front(iso);

        Near(new Vector3(0, 1, 0), Shift(axes, rest, new ClinicalOffset(Labial: 1)));
        Near(occlusal, Shift(axes, rest, new ClinicalOffset(Occlusal: 1)));
        Near(mesial, Shift(axes, rest, new ClinicalOffset(Mesial: 1)));
    }

    [Theory, MemberData(nameof(Quadrants)), Trait("basis", "law")]
    public void Positive_rotation_turns_the_mesial_side_labially(int iso)
    {
        (ClinicalAxes axes, SlotFrame rest, Vector3 mesial, _) = Front(iso);

        Vector3 moved = Carry(axes, rest, new ClinicalOffset(Rotation: Small), mesial);

        Assert.Equal(Small, (moved - mesial).Y, 1e-6);
        Assert.Equal(0, (moved - mesial).Z, 1e-9);
    }

    [Theory, MemberData(nameof(Quadrants)), Trait("basis", "law")]
    public void Positive_tip_leans_the_crown_toward_the_mesial(int iso)
    {
        (ClinicalAxes axes, SlotFrame rest, Vector3 mesial, Vector3 occlusal) = Front(iso);

        Vector3 moved = Carry(axes, rest, new ClinicalOffset(Tip: Small), occlusal);

        Assert.Equal(Small, Vector3.Dot(moved - occlusal, mesial), 1e-6);
        Assert.Equal(0, (moved - occlusal).Y, 1e-9);
    }

    [Theory, MemberData(nameof(Quadrants)), Trait("basis", "law")]
    public void Positive_torque_moves_the_crown_labially_and_the_root_lingually(int iso)
    {
        (ClinicalAxes axes, SlotFrame rest, _, Vector3 occlusal) = Front(iso);

        Vector3 crown = Carry(axes, rest, new ClinicalOffset(Torque: Small), occlusal);
        Vector3 root = Carry(axes, rest, new ClinicalOffset(Torque: Small), -10 * occlusal);

        Assert.Equal(Small, (crown - occlusal).Y, 1e-6);
        Assert.Equal(-10 * Small, (root + 10 * occlusal).Y, 1e-5);
    }

    [Theory, MemberData(nameof(Quadrants)), Trait("basis", "law")]
    public void Loads_carry_the_same_signs_as_offsets(int iso)
    {
        (ClinicalAxes axes, SlotFrame rest, Vector3 mesial, Vector3 occlusal) = Front(iso);
        var labial = new Vector3(0, 1, 0);
        Vector3 force = 1 * labial + 2 * occlusal + 3 * mesial;
        // A labial push one millimetre mesial of the slot rotates; a mesial push one millimetre occlusal of it tips;
        // a labial push there torques.
        ClinicalLoad rotated = axes.Resolve(rest, new Wrench(labial, default, rest.Centre + mesial));
        ClinicalLoad tipped = axes.Resolve(rest, new Wrench(mesial, default, rest.Centre + occlusal));
        ClinicalLoad torqued = axes.Resolve(rest, new Wrench(labial, default, rest.Centre + occlusal));

        ClinicalLoad plain = axes.Resolve(rest, new Wrench(force, default, rest.Centre));

        Assert.Equal((1, 2, 3), (plain.LabialForce, plain.OcclusalForce, plain.MesialForce));
        Assert.Equal(Math.Sqrt(14), plain.Force, 12);
        Assert.Equal((1, 0, 0), (rotated.RotationMoment, rotated.TipMoment, rotated.TorqueMoment));
        Assert.Equal((0, 1, 0), (tipped.RotationMoment, tipped.TipMoment, tipped.TorqueMoment));
        Assert.Equal((0, 0, 1), (torqued.RotationMoment, torqued.TipMoment, torqued.TorqueMoment));
    }

    [Fact, Trait("basis", "ours")]
    public void The_bench_reads_as_an_upper_right_tooth() =>
        Assert.Equal(ClinicalAxes.For(ToothNumber.FromIso(13)), ClinicalAxes.Bench);

    [Fact, Trait("basis", "law")]
    public void Between_undoes_Displaced() => Cases.Sample((axes, rest, offset, _, _) =>
    {
        ClinicalOffset again = axes.Between(rest, axes.Displaced(rest, offset));

        Assert.Equal(offset.Labial, again.Labial, 1e-9);
        Assert.Equal(offset.Occlusal, again.Occlusal, 1e-9);
        Assert.Equal(offset.Mesial, again.Mesial, 1e-9);
        Assert.Equal(offset.Rotation, again.Rotation, 1e-9);
        Assert.Equal(offset.Tip, again.Tip, 1e-9);
        Assert.Equal(offset.Torque, again.Torque, 1e-9);
    });

    [Theory, Trait("basis", "law")]
    [InlineData(0)]
    [InlineData(1e-9)]
    [InlineData(1e-7)]
    [InlineData(3.14159)]
    [InlineData(Math.PI)]
    public void Between_is_safe_at_no_turn_and_at_half_a_turn(double angle)
    {
        (ClinicalAxes axes, SlotFrame rest, _, _) = Front(13);

        ClinicalOffset again = axes.Between(rest, axes.Displaced(rest, new ClinicalOffset(Torque: angle)));

        Assert.Equal(angle, Math.Abs(again.Torque), 1e-7);
        Assert.Equal(0, again.Rotation, 1e-7);
    }

    [Fact, Trait("basis", "law")]
    public void Moving_the_whole_patient_changes_no_clinical_figure() =>
        Cases.Sample((axes, rest, offset, turn, force) =>
        {
            SlotFrame actual = axes.Displaced(rest, offset);
            var load = new Wrench(force, 3 * force, rest.Centre);
            SlotFrame restMoved = Rigid(rest, turn);
            SlotFrame actualMoved = axes.Displaced(restMoved, offset);
            var loadMoved = new Wrench(force.Turned(turn), 3 * force.Turned(turn), Carried(rest.Centre, turn));

            Near(Carried(actual.Centre, turn), actualMoved.Centre);
            Near(actual.Along.Turned(turn), actualMoved.Along);
            Near(actual.Outward.Turned(turn), actualMoved.Outward);
            ClinicalLoad one = axes.Resolve(actual, load);
            ClinicalLoad other = axes.Resolve(actualMoved, loadMoved);
            Assert.Equal(one.LabialForce, other.LabialForce, 1e-9);
            Assert.Equal(one.TipMoment, other.TipMoment, 1e-8);
            Assert.Equal(one.TorqueMoment, other.TorqueMoment, 1e-8);
            Assert.Equal(one.Moment, other.Moment, 1e-8);
        });

    [Fact, Trait("basis", "law")]
    public void An_offset_that_is_no_number_is_refused()
    {
        (ClinicalAxes axes, SlotFrame rest, _, _) = Front(13);

        Assert.Throws<ArgumentOutOfRangeException>(() => axes.Displaced(rest, new ClinicalOffset(Tip: double.NaN)));
    }

    private static (ClinicalAxes, SlotFrame, Vector3, Vector3) Front(int iso)
    {
        var tooth = ToothNumber.FromIso(iso);
        SlotFrame rest = SlotFrame.Create(new Vector3(0, 40, 0), new Vector3(-1, 0, 0), new Vector3(0, 1, 0));
        return (
            ClinicalAxes.For(tooth),
            rest,
            new Vector3(tooth.IsRight ? -1 : 1, 0, 0),
            new Vector3(0, 0, tooth.IsUpper ? -1 : 1));
    }

    private static Vector3 Shift(ClinicalAxes axes, SlotFrame rest, ClinicalOffset offset) =>
        axes.Displaced(rest, offset).Centre - rest.Centre;

    /// <summary>Where a point fixed to the tooth, given from the slot's centre, goes.</summary>
    private static Vector3 Carry(ClinicalAxes axes, SlotFrame rest, ClinicalOffset offset, Vector3 point)
    {
        SlotFrame actual = axes.Displaced(rest, offset);
        return actual.Along * Vector3.Dot(point, rest.Along) + actual.Outward * Vector3.Dot(point, rest.Outward)
            + actual.Third * Vector3.Dot(point, rest.Third) + (actual.Centre - rest.Centre);
    }

    private static Vector3 Carried(Vector3 point, Vector3 turn) => point.Turned(turn) + new Vector3(5, -3, 2);

    private static SlotFrame Rigid(SlotFrame frame, Vector3 turn) => SlotFrame.Create(
        Carried(frame.Centre, turn), frame.Along.Turned(turn), frame.Outward.Turned(turn));

    private static void Near(Vector3 expected, Vector3 found) => Assert.True(
        (expected - found).Length < 1e-9, $"expected {expected}, found {found}");

    private static readonly Gen<Vector3> Vectors =
        Gen.Double[-1.7, 1.7].Array[3].Select(v => new Vector3(v[0], v[1], v[2]));

    private static readonly Gen<ClinicalOffset> Offsets = Gen.Select(
        Vectors, Vectors, (shift, turn) => new ClinicalOffset(shift.X, shift.Y, shift.Z, turn.X, turn.Y, turn.Z));

    private static readonly Gen<(ClinicalAxes, SlotFrame, ClinicalOffset, Vector3, Vector3)> Cases = Gen.Select(
        Gen.Int[0, 3],
        Vectors,
        Offsets,
        Vectors,
        Vectors,
        (quadrant, turn, offset, patient, force) =>
        {
            SlotFrame rest = Rigid(
                SlotFrame.Create(new Vector3(10, 30, 1), new Vector3(-1, 0, 0), new Vector3(0, 1, 0)), turn);
            return (new ClinicalAxes(quadrant % 2 * 2 - 1, quadrant / 2 * 2 - 1), rest, offset, patient, force);
        });
}
