using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Units;
using Archwright.Treatment.Movement;
using Archwright.Treatment.Patients;
using Archwright.Treatment.Support;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>One tooth under a known load.</summary>
internal static class TeethAlone
{
    private const double NewtonsPerGramForce = 0.00980665;
    private const double DaysPerMonth = 365.25 / 12;

    /// <summary>What the crown of <c>tooth</c> gives way under <c>force</c> N at <c>arm</c> mm from the centre of
    /// resistance, read there [mm/N].</summary>
    public static double Mobility(SetUp given)
    {
        ToothNumber tooth = Tooth(given);
        double force = given.Number("force");
        double below = ToothSupport.Of(tooth).Arm - given.Number("arm");
        ClinicalOffset moved = LoneTooth.Given(tooth, new ClinicalLoad(force, 0, 0, 0, 0, -force * below));
        return (moved.Labial - moved.Torque * below) / force;
    }

    /// <summary>Speed of a canine translated distally by <c>gram</c> gf, times <c>factor</c> when it slides on a wire
    /// [mm/month].</summary>
    public static double Retraction(SetUp given)
    {
        ToothNumber tooth = Tooth(given);
        double force = given.Number("gram") * NewtonsPerGramForce;
        ToothSupport support = ToothSupport.Of(tooth);
        var load = new ClinicalLoad(0, 0, -force, force * support.ToResistance.Y, force * support.Arm, 0);
        double rate = given.Has("slides") ? MovementConstants.SpaceClosure.Value : 1;
        return -LoneTooth.Moved(tooth, load, days: 28, rate).Mesial / 28 * DaysPerMonth;
    }

    /// <summary>Turn for each millimetre moved when the couple is <c>share</c> times force times arm [degrees/mm].
    /// </summary>
    public static double TurnPerMillimetre(SetUp given)
    {
        ClinicalOffset moved = Coupled(given, given.Number("share"));
        return Math.Abs(Angle.ToDegrees(moved.Torque) / moved.Labial);
    }

    /// <summary>Couple over force that turns the tooth about its apex, over the one that translates it.</summary>
    public static double ApexShare(SetUp given)
    {
        // The apex lies two thirds of the embedded root beyond the centre of resistance and stays where it is.
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++)
        {
            double share = (low + high) / 2;
            ClinicalOffset moved = Coupled(given, share);
            ToothSupport support = ToothSupport.Of(Tooth(given));
            double apex = moved.Labial - moved.Torque * (support.Arm + 2.0 / 3 * support.EmbeddedRoot);
            (low, high) = apex * moved.Labial < 0 ? (share, high) : (low, share);
        }

        return (low + high) / 2;
    }

    /// <summary>Crown movement under <c>more</c> N over that under <c>less</c> N in <c>weeks</c>.</summary>
    public static double DoseRatio(SetUp given) =>
        Tipped(given, given.Number("more")) / Tipped(given, given.Number("less"));

    /// <summary>Movement of the young over that of the grown.</summary>
    public static double AgeRatio(SetUp given) =>
        PatientRate.ForAge(given.Number("young")).Median / PatientRate.ForAge(given.Number("grown")).Median;

    private static double Tipped(SetUp given, double force) => LoneTooth.Moved(
        Tooth(given), new ClinicalLoad(force, 0, 0, 0, 0, 0), 7 * given.Number("weeks")).Labial;

    private static ClinicalOffset Coupled(SetUp given, double share)
    {
        ToothNumber tooth = Tooth(given);
        double arm = ToothSupport.Of(tooth).Arm;
        return LoneTooth.Moved(tooth, new ClinicalLoad(0.5, 0, 0, 0, 0, -0.5 * arm * share), days: 1);
    }

    private static ToothNumber Tooth(SetUp given) => ToothNumber.FromIso((int)given.Number("tooth"));
}
