using Archwright.Dentition.Teeth;
using Archwright.Practice.Courses;
using Archwright.Practice.People;
using Archwright.Practice.Values;
using Archwright.Practice.Visits;

namespace Archwright.Practice.Advice;

/// <summary>An arch as a visit left it: what its wire worked on from then on.</summary>
/// <param name="Inputs">Slots, positions seen, ties and ends of that visit.</param>
/// <param name="WireId">The wire in place afterwards.</param>
public sealed record PastInputs(AdviceInputs Inputs, string WireId)
{
    /// <summary>The arch after a visit.</summary>
    /// <returns>Null when positions were not seen, or the visit left no wire in place.</returns>
    public static PastInputs? After(Visit visit, ArchTreatment treatment)
    {
        if (visit.Content.Arch(treatment.Jaw) is not { Seen: { } seen } arch
            || (arch.Decided?.WireId ?? arch.Found?.WireId) is not { Length: > 0 } wire)
        {
            return null;
        }

        return new PastInputs(
            new AdviceInputs
            {
                Jaw = treatment.Jaw,
                SlotCode = treatment.Appliance.SlotCode,
                Bonded = treatment.Appliance.BondedBut(arch.Bare),
                Bare = arch.Bare ?? ToothMap<BareTooth>.Empty,
                Positions = seen.Positions,
                Ties = arch.Ties,
                Ends = arch.RightEnd ?? default,
                Stock = Listing<string>.Empty,
                Alerts = Listing<AlertKind>.Empty,
            },
            wire);
    }

    /// <summary>Where the teeth are expected some weeks later, for the usual patient of this age.</summary>
    /// <param name="weeks">Whole weeks since.</param>
    /// <param name="ageYears">Age then.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The wire cannot be followed so far; the message says why.</exception>
    public ToothMap<ToothOffset> Expected(int weeks, double ageYears, CancellationToken cancellation = default)
    {
        Outlook outlook = Outlook.Median(Inputs, WireId, weeks, ageYears, cancellation);
        return outlook.Weeks.Length > weeks
            ? outlook.Weeks[weeks].Positions
            : throw new ArgumentException(outlook.WhyItStops ?? "The wire cannot be followed to this day.");
    }
}
