namespace Archwright.Treatment.Movement;

/// <summary>How fast a tooth moves under a stress of its ligament: the human dose–response.</summary>
/// <remarks>
/// Mean of people, growing and grown together:
/// <code>
///     v(s) = (s/s₀) a            s below s₀ = 1 kPa,
///     v(s) = a + b ln(s/1 kPa)   between,
///     v(s) = v(s₁)               s above s₁ = 100 kPa.
/// </code>
/// J. C. Nickel et al., Am J Orthod Dentofacial Orthop 2014;145(4 Suppl):S74–S81: upper canines in translation, 4 to
/// 78 kPa, linear in time, no lag in 96 % of teeth; constants fitted on its five means. Outside 4 to 78 kPa the
/// shape is ours: no measured point stands below 4 kPa, and the logarithm must end somewhere. Twenty times the stress
/// gives 2.2 times the speed; people differ far more (<see cref="Patients.PatientRate"/>).
/// A tooth stressed beyond s₁ first stands still (<see cref="LagOf"/>): there the ligament is pressed dead, and bone
/// is resorbed from beneath before anything moves.
/// </remarks>
public static class MovementLaw
{
    private static readonly double A = MovementConstants.SpeedAtOneKilopascal.Value;
    private static readonly double B = MovementConstants.SpeedPerLogarithm.Value;
    private static readonly double Least = MovementConstants.LeastStress.Value;
    private static readonly double Most = MovementConstants.MostStress.Value;

    /// <summary>Speed of the mean person's tooth [mm/day].</summary>
    /// <param name="stress">Mean compressive stress of the ligament [kPa], zero or more.</param>
    public static double Speed(double stress) => stress < Least
        ? LeastSpeed * stress / Least
        : A + B * Math.Log(Math.Min(stress, Most));

    /// <summary>Relative gain of speed for a relative gain of stress, (s/v) dv/ds.</summary>
    /// <param name="stress">[kPa]</param>
    internal static double Sensitivity(double stress) => stress < Least ? 1 : stress < Most ? B / Speed(stress) : 0;

    /// <summary>How long a tooth stands still when a load sets in, mean person [days].</summary>
    /// <param name="stress">Mean compressive stress of the ligament [kPa].</param>
    /// <remarks>None up to 78 kPa (Nickel et al. 2014: 96 % of teeth), none at 4 and 13 kPa but about 21 days with
    /// the heavier forces in use (Iwasaki et al. 2000; reviews give 0 to 35). That it sets in where the measured
    /// speeds end is ours.</remarks>
    public static double LagOf(double stress) => stress > Most ? MovementConstants.Lag.Value : 0;

    /// <summary>The speed at the stress where the logarithm begins: a wire that moves no tooth faster is spent
    /// [mm/day].</summary>
    public static double LeastSpeed { get; } = A + B * Math.Log(Least);

    /// <summary>The greatest speed of the mean person [mm/day].</summary>
    public static double GreatestSpeed { get; } = A + B * Math.Log(Most);

    /// <summary>Stress below which a wire counts as spent [kPa].</summary>
    public static double LeastStress => Least;
}
