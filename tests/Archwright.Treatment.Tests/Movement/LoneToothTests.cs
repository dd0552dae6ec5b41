using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Tests.Movement;

public sealed class LoneToothTests
{
    private const double GramForce = 0.00980665;
    private const double Degree = Math.PI / 180;

    public static TheoryData<int> AllTeeth =>
        [.. ToothNumber.UpperArch.Concat(ToothNumber.LowerArch).Where(t => t.Position < 8).Select(t => t.Iso)];

    /// <summary>Force on a canine through its centre of resistance, and the mean speed measured: Nickel et al. 2014,
    /// stresses turned back into forces by the 44.7 mm² of Iwasaki et al. 2000. Two standard errors.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(18, 0.028)]
    [InlineData(59, 0.040)]
    [InlineData(119, 0.050)]
    [InlineData(237, 0.054)]
    [InlineData(356, 0.061)]
    public void A_canine_translates_at_the_measured_speed(double gramForce, double speed)
    {
        ToothNumber canine = ToothNumber.FromIso(13);
        double force = gramForce * GramForce;
        double arm = ToothSupport.Of(canine).Arm;
        double lingual = -ToothSupport.Of(canine).ToResistance.Y;
        // Distal force through the centre of resistance: couples against tip and rotation.
        ClinicalOffset moved = LoneTooth.Moved(
            canine, new ClinicalLoad(0, 0, -force, force * -lingual, force * arm, 0), days: 84);

        Assert.InRange(-moved.Mesial / 84, speed - 0.008, speed + 0.008);
        Assert.InRange(Math.Abs(moved.Tip) / Degree, 0, 0.05 * Math.Abs(moved.Mesial));
    }

    /// <summary>Premolars tipped buccally by 1 N for 8 weeks: mean 2.42 mm (Dudic et al. 2013, 30 people) and 2.7 mm
    /// (Giannopoulou et al. 2016, 11 people), extremes 0.3 and 5.8 mm. The mean was fitted; the spread was fitted on
    /// the second trial's standard deviation, and the extremes were not used.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(14)]
    [InlineData(15)]
    [InlineData(34)]
    [InlineData(35)]
    public void A_premolar_tips_as_far_in_eight_weeks_as_in_the_trials(int iso)
    {
        PatientRate belief = PatientRate.Unknown;
        Assert.InRange(Tipped(iso, belief.Median), 1.8, 2.7);

        double spread = Math.Sqrt(
            belief.LogSpread * belief.LogSpread + PatientRate.ToothSpread * PatientRate.ToothSpread);
        Assert.InRange(Tipped(iso, Math.Exp(belief.LogMedian - 1.645 * spread)), 0.3, 2.5);
        Assert.InRange(Tipped(iso, Math.Exp(belief.LogMedian + 1.645 * spread)), 2.5, 5.8);
    }

    /// <summary>The fit of the one arm of turning: mean of the four kinds of premolar, both trials by their
    /// people.</summary>
    [Fact, Trait("basis", "published")]
    public void The_premolars_together_give_the_mean_that_was_fitted() =>
        Assert.Equal(2.495, new[] { 14, 15, 34, 35 }.Average(iso => Tipped(iso, rate: 1)), tolerance: 0.02);

    /// <summary>Kusy and Tulloch, Am J Orthod Dentofacial Orthop 1986;90:127–131 (found): a moment at the bracket
    /// over force equal to the distance to the centre of resistance translates; under 0.05° a millimetre is
    /// asked.</summary>
    [Theory, Trait("basis", "published"), MemberData(nameof(AllTeeth))]
    public void A_couple_of_force_times_arm_makes_bodily_movement(int iso)
    {
        ToothNumber tooth = ToothNumber.FromIso(iso);
        double arm = ToothSupport.Of(tooth).Arm;
        var load = new ClinicalLoad(-0.5, 0, 0, 0, 0, 0.5 * arm);

        ClinicalOffset moved = LoneTooth.Moved(tooth, load, days: 28);

        Assert.True(moved.Labial < -0.5);
        Assert.InRange(Math.Abs(moved.Torque) / Degree, 0, 0.05 * Math.Abs(moved.Labial));
        Assert.Equal(MovementKind.Bodily, LoneTooth.Answer(tooth, load).Kind);
    }

    /// <summary>Nägerl et al., Am J Orthod Dentofacial Orthop 1991;99:337–345 (found): centre of rotation times line
    /// of force, both from the centre of resistance, is one number for a tooth and a plane.</summary>
    [Fact, Trait("basis", "published")]
    public void The_centre_of_rotation_goes_with_the_line_of_force()
    {
        ToothNumber incisor = ToothNumber.FromIso(11);
        ToothSupport support = ToothSupport.Of(incisor);
        foreach (double line in (ReadOnlySpan<double>)[1, 2, 5, 10])
        {
            // Force 0.2 N labially whose line passes `line` incisal of the centre of resistance.
            var load = new ClinicalLoad(0.2, 0, 0, 0, 0, -0.2 * (support.Arm - line));
            ClinicalOffset moved = LoneTooth.Moved(incisor, load, days: 1);
            double shiftAtResistance = moved.Labial - moved.Torque * support.Arm;
            Assert.Equal(
                support.TurningSquares.X, line * shiftAtResistance / moved.Torque,
                tolerance: 0.02 * support.TurningSquares.X);
        }
    }

    /// <summary>Teaching values of an incisor, 10 mm from slot to centre of resistance (Burstone 1962, from memory):
    /// 0–5 tipping, about 7 controlled, about 10 bodily, 12 root.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(0, MovementKind.Tipping)]
    [InlineData(5, MovementKind.Tipping)]
    [InlineData(7.5, MovementKind.ControlledTipping)]
    [InlineData(10, MovementKind.Bodily)]
    [InlineData(12.5, MovementKind.Root)]
    public void The_moment_to_force_ratio_names_the_movement(double ratio, MovementKind kind) =>
        Assert.Equal(kind, LoneTooth.Answer(
            ToothNumber.FromIso(12), new ClinicalLoad(-0.5, 0, 0, 0, 0, 0.5 * ratio)).Kind);

    /// <summary>First mobility of an upper central: 0.05 to 0.12 mm a newton; 100 to 120 µm under 4.9 N (H. R.
    /// Mühlemann, 1951–1967, from memory), here given a quarter more each way for the scatter between people. Force
    /// and reading 9.2 mm from the centre of resistance, below the slot, as on a crown's middle.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(0.1, 0.005, 0.012)]
    [InlineData(4.9, 0.075, 0.150)]
    public void An_incisor_gives_way_as_much_as_measured(double force, double least, double most)
    {
        ToothNumber incisor = ToothNumber.FromIso(11);
        double below = ToothSupport.Of(incisor).Arm - 9.2;
        ClinicalOffset given = LoneTooth.Given(incisor, new ClinicalLoad(force, 0, 0, 0, 0, -force * below));
        Assert.InRange(given.Labial - given.Torque * below, least, most);
    }

    /// <summary>Thin layer round a cylinder, E = 0.05 MPa, ν = 0.45, t = 0.2 mm, 204 mm², 11.5 mm: 106 N/mm and
    /// 1160 N·mm/rad, computed apart from this code.</summary>
    [Fact, Trait("basis", "independent")]
    public void The_ligament_is_as_stiff_as_a_thin_layer()
    {
        ToothSupport support = ToothSupport.Of(ToothNumber.FromIso(11));
        Assert.Equal(106, 1 / support.ShiftCompliance.Y, tolerance: 1);
        Assert.Equal(1160, 1 / support.TurnCompliance.X, tolerance: 15);
    }

    [Theory, Trait("basis", "law"), MemberData(nameof(AllTeeth))]
    public void Right_and_left_teeth_move_alike(int iso)
    {
        ToothNumber tooth = ToothNumber.FromIso(iso);
        ToothNumber other = ToothNumber.FromIso(iso switch
        {
            < 20 => iso + 10, < 30 => iso - 10, < 40 => iso + 10, _ => iso - 10,
        });
        var load = new ClinicalLoad(0.3, 0.1, -0.2, 1, -2, 0.5);
        ClinicalOffset one = LoneTooth.Moved(tooth, load, days: 30);
        ClinicalOffset two = LoneTooth.Moved(other, load, days: 30);
        Assert.Equal(one.Labial, two.Labial, tolerance: 1e-9);
        Assert.Equal(one.Mesial, two.Mesial, tolerance: 1e-9);
        Assert.Equal(one.Tip, two.Tip, tolerance: 1e-9);
        Assert.Equal(one.Rotation, two.Rotation, tolerance: 1e-9);
    }

    [Theory, Trait("basis", "law"), MemberData(nameof(AllTeeth))]
    public void Movement_always_takes_energy_from_what_pushes(int iso)
    {
        ToothNumber tooth = ToothNumber.FromIso(iso);
        var load = new ClinicalLoad(-0.3, 0.2, 0.4, 3, -1, 2);
        ClinicalOffset moved = LoneTooth.Moved(tooth, load, days: 0.1);
        double work = load.LabialForce * moved.Labial + load.OcclusalForce * moved.Occlusal
            + load.MesialForce * moved.Mesial + load.RotationMoment * moved.Rotation + load.TipMoment * moved.Tip
            + load.TorqueMoment * moved.Torque;
        Assert.True(work > 0);
    }

    private static double Tipped(int iso, double rate) => LoneTooth.Moved(
        ToothNumber.FromIso(iso), new ClinicalLoad(1, 0, 0, 0, 0, 0), days: 56, rate).Labial;
}
