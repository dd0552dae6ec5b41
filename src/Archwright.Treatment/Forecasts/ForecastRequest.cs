using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Patients;

namespace Archwright.Treatment.Forecasts;

/// <summary>What a forecast is to be made of: an arch with a wire in it, and the time to look ahead.</summary>
public sealed record ForecastRequest
{
    /// <summary>Longest forecast: two years.</summary>
    public const int MostWeeks = 104;

    /// <summary>Wire, slots where they stand today, ties, ends, temperature.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>Tooth of each slot, in the same order.</summary>
    public required ImmutableArray<ToothNumber> Teeth { get; init; }

    /// <summary>How far to look ahead, 1 to <see cref="MostWeeks"/>.</summary>
    public required int Weeks { get; init; }

    /// <summary>How long this wire has been in place already; zero for one that is fitted today.</summary>
    /// <remarks>It matters to a wire with memory alone, which pushes less on the way back than on the way in. Give
    /// <see cref="FittedPlaces"/> where they are known; else they are estimated from this figure.</remarks>
    public double WeeksInPlace { get; init; }

    /// <summary>Where the slots stood when this wire was fitted, in order; empty when not known or today.</summary>
    public ImmutableArray<SlotFrame> FittedPlaces { get; init; } = [];

    /// <summary>What is believed of the patient's rate of movement.</summary>
    public PatientRate Rate { get; init; } = PatientRate.Unknown;

    /// <summary>How many times as fast as its owner's others a tooth moves; 1 where nothing is said.</summary>
    public ImmutableDictionary<ToothNumber, double> ToothRates { get; init; } =
        ImmutableDictionary<ToothNumber, double>.Empty;

    /// <summary>Loads at the slots that do not come from the wire, as of a chain or a lip; they go along with their
    /// teeth.</summary>
    public ImmutableDictionary<ToothNumber, ClinicalLoad> AppliedLoads { get; init; } =
        ImmutableDictionary<ToothNumber, ClinicalLoad>.Empty;

    /// <summary>Lips and cheeks; none unless they are asked for.</summary>
    public SoftTissue SoftTissue { get; init; } = SoftTissue.None;

    /// <summary>Whether teeth slide along the wire into a space: a slower movement with a factor of its
    /// own.</summary>
    public bool ClosesSpace { get; init; }

    /// <summary>Whether neighbouring crowns keep each other from passing.</summary>
    public bool CrownsTouch { get; init; } = true;

    /// <summary>Whether a tooth loaded beyond the law's range stands still at first, as
    /// <see cref="Movement.MovementLaw.LagOf"/> says.</summary>
    public bool OverloadedTeethWait { get; init; } = true;

    /// <summary>Largest error of one time step [mm at the crown]: smaller is finer and slower.</summary>
    public double StepTolerance { get; init; } = 0.02;

    /// <summary>A forecast of an arch that was built from tables.</summary>
    /// <param name="arch">The arch with its wire.</param>
    /// <param name="weeks">How far to look ahead.</param>
    public static ForecastRequest Of(ArchSetup arch, int weeks) => new()
    {
        Arrangement = arch.Arrangement, Teeth = arch.Teeth, Weeks = weeks,
    };

    /// <summary>The same with one coefficient of friction in every slot; see <see cref="Slot.Friction"/>.</summary>
    /// <param name="coefficient">0 for none.</param>
    public ForecastRequest WithFriction(double coefficient) =>
        this with { Arrangement = Arrangement.WithFriction(coefficient) };

    internal double RateOf(ToothNumber tooth) => Rate.Median * ToothRates.GetValueOrDefault(tooth, 1)
        * (ClosesSpace ? Movement.MovementConstants.SpaceClosure.Value : 1);

    /// <exception cref="ArgumentException">The first thing that is wrong.</exception>
    internal void Check()
    {
        if (Weeks is < 1 or > MostWeeks)
            throw new ArgumentException($"A forecast runs for 1 to {MostWeeks} weeks, not {Weeks}.", nameof(Weeks));
        if (Teeth.IsDefaultOrEmpty || Teeth.Length != Arrangement.Slots.Length)
            throw new ArgumentException("A forecast needs one tooth for every slot.", nameof(Teeth));
        if (!(StepTolerance is >= 1e-4 and <= 1))
            throw new ArgumentException("The error of a step lies between 0.0001 and 1 mm.", nameof(StepTolerance));
        if (!FittedPlaces.IsDefaultOrEmpty && FittedPlaces.Length != Arrangement.Slots.Length)
            throw new ArgumentException("There is one fitted place for every slot, or none.", nameof(FittedPlaces));
        if (!(WeeksInPlace is >= 0 and <= 520))
            throw new ArgumentException("A wire has been in place for 0 to 520 weeks.", nameof(WeeksInPlace));

        CheckSoftTissue();
        foreach (ToothNumber tooth in Teeth)
        {
            if (!Anatomy.TryOf(tooth, out _))
            {
                throw new ArgumentException(
                    tooth.Iso == 0
                        ? "A slot stands on no tooth: only teeth can move."
                        : $"{tooth} ({tooth.Name}) has no row in the table of anatomy.",
                    nameof(Teeth));
            }
        }

        CheckFactors();
    }

    private void CheckSoftTissue()
    {
        if (!(SoftTissue.Factor is >= 0 and <= SoftTissue.MostFactor))
        {
            throw new ArgumentException(
                $"Lips and cheeks are 0 to {SoftTissue.MostFactor:0} times as firm as on average.", nameof(SoftTissue));
        }

        if (!SoftTissue.Balanced.IsDefaultOrEmpty && SoftTissue.Balanced.Length != Teeth.Length)
            throw new ArgumentException("There is one place of balance for every slot, or none.", nameof(SoftTissue));
    }

    private void CheckFactors()
    {
        if (!(Rate.Median is > 0 and < 100) || !(Rate.LogSpread is >= 0 and < 5))
            throw new ArgumentException("The patient's rate is not a positive, sensible factor.", nameof(Rate));

        foreach ((ToothNumber tooth, double rate) in ToothRates)
        {
            if (!(rate is >= 0 and < 100))
            {
                throw new ArgumentException(
                    $"The rate of {tooth} is {rate}; it lies from 0 to 100.", nameof(ToothRates));
            }
        }

        foreach ((ToothNumber tooth, ClinicalLoad load) in AppliedLoads)
        {
            if (!double.IsFinite(load.Force + load.Moment))
                throw new ArgumentException($"The load on {tooth} is not a finite number.", nameof(AppliedLoads));
        }
    }
}
