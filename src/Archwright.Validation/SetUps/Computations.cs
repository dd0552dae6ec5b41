using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>What the checks may ask to be computed, by the names of the column <c>compute</c>.</summary>
internal static class Computations
{
    public static IReadOnlyDictionary<string, Func<SetUp, double>> All { get; } =
        new Dictionary<string, Func<SetUp, double>>(StringComparer.Ordinal)
        {
            ["cross-section-number"] = SectionFigures.CrossSectionNumber,
            ["torsion-share"] = SectionFigures.TorsionShare,
            ["torsion-constant"] = SectionFigures.TorsionConstant,
            ["edge-loss"] = SectionFigures.EdgeLoss,
            ["beam-factor"] = Beams.Factor,
            ["three-point-stiffness"] = Beams.ThreePointStiffness,
            ["elastica"] = LargeBending.Elastica,
            ["45-degree-bend"] = LargeBending.Bend45,
            ["geometry-moments"] = TwoBrackets.MomentRatio,
            ["geometry-force"] = TwoBrackets.ForceShare,
            ["play"] = Play.InDegrees,
            ["critical-angle"] = BindingAngle.InDegrees,
            ["torque"] = TorqueRig.Torque,
            ["torque-ratio"] = TorqueRig.TorqueRatio,
            ["torque-rate"] = TorqueRig.DegreesPerTorque,
            ["twist-for-torque"] = TorqueRig.TwistForTorque,
            ["torque-least-rate"] = TorqueRig.LeastRate,
            ["bend-force"] = Bending.Force,
            ["bend-force-ratio"] = Bending.ForceRatio,
            ["bend-slope"] = Bending.Slope,
            ["bend-temperature-visit"] = Bending.AfterTemperature,
            ["arc-moment-ratio"] = SpringBack.MomentRatio,
            ["spring-back-ratio"] = SpringBack.Ratio,
            ["mandrel"] = SpringBack.Mandrel,
            ["sliding"] = SlidingRig.Resistance,
            ["sliding-ratio"] = SlidingRig.Ratio,
            ["sliding-drawn"] = SlidingRig.Drawn,
            ["displaced-tooth"] = DisplacedTooth.Force,
            ["displaced-tooth-ratio"] = DisplacedTooth.ForceRatio,
            ["stiffness-ratio"] = AlloyRatios.Stiffness,
            ["strength-ratio"] = AlloyRatios.Strength,
            ["range-ratio"] = AlloyRatios.Range,
            ["mobility"] = TeethAlone.Mobility,
            ["retraction"] = TeethAlone.Retraction,
            ["dose-ratio"] = TeethAlone.DoseRatio,
            ["age-ratio"] = TeethAlone.AgeRatio,
            ["turn"] = TeethAlone.TurnPerMillimetre,
            ["apex-share"] = TeethAlone.ApexShare,
            ["alignment-share"] = Alignment.Share,
            ["alignment-days"] = Alignment.Days,
            ["alignment-difference"] = Alignment.Difference,
            ["width-gain"] = Alignment.WidthGain,
        };
}
