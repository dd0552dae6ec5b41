using Archwright.Practice.Values;

namespace Archwright.Web.Chair;

/// <summary>Positions as a screen can mean them: a twentieth of a millimetre and half a degree.</summary>
internal static class Rounding
{
    private const double StepMm = 0.05;
    private const double StepDegrees = 0.5;

    /// <summary>An offset to the steps of the screen, inside what a record takes.</summary>
    public static ToothOffset Rounded(this ToothOffset offset) => new(
        Round(offset.LabialMm, StepMm, ToothOffset.LargestShiftMm),
        Round(offset.OcclusalMm, StepMm, ToothOffset.LargestShiftMm),
        Round(offset.MesialMm, StepMm, ToothOffset.LargestShiftMm),
        Round(offset.RotationDegrees, StepDegrees, ToothOffset.LargestTurnDegrees),
        Round(offset.TipDegrees, StepDegrees, ToothOffset.LargestTurnDegrees),
        Round(offset.TorqueDegrees, StepDegrees, ToothOffset.LargestTurnDegrees));

    /// <summary>All offsets of an arch to the steps of the screen.</summary>
    public static ToothMap<ToothOffset> Rounded(this ToothMap<ToothOffset> positions) =>
        ToothMap<ToothOffset>.Of(positions.Select(pair => KeyValuePair.Create(pair.Key, pair.Value.Rounded())));

    private static double Round(double value, double step, double most) =>
        Math.Clamp(Math.Round(Math.Round(value / step) * step, 2), -most, most);
}
