using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Rules;
using Archwright.Practice.Values;

namespace Archwright.Practice.Courses;

/// <summary>What an appliance on one arch is made of.</summary>
public sealed record Appliance
{
    /// <summary>Nominal slot: "018" or "022".</summary>
    public required string SlotCode { get; init; }

    /// <summary>Id of the prescription.</summary>
    public required string Prescription { get; init; }

    /// <summary>Kind of brackets in words: "metal twin".</summary>
    public string Brackets { get; init; } = "";

    /// <summary>How teeth are tied unless noted otherwise.</summary>
    public TieKind UsualTie { get; init; } = TieKind.Elastic;

    /// <summary>Teeth that carry a bracket or a tube.</summary>
    public required Listing<ToothNumber> Bonded { get; init; }

    /// <summary>Id of the wire that the alignment is to end on; empty when not settled.</summary>
    public string WorkingWire { get; init; } = "";

    /// <summary>Teeth that carry a bracket or a tube on a day.</summary>
    /// <param name="bare">What was noted that day of places without one; null for nothing.</param>
    public Listing<ToothNumber> BondedBut(ToothMap<BareTooth>? bare) => bare is null or { Count: 0 }
        ? Bonded
        : Listing<ToothNumber>.Of(Bonded.Where(tooth => !bare.Has(tooth)));
}

/// <summary>Treatment of one arch with a fixed appliance.</summary>
public sealed class ArchTreatment
{
    private ArchTreatment()
    {
    }

    /// <summary>Identity.</summary>
    public Guid Id { get; private set; }

    /// <summary>Whose arch.</summary>
    public Guid PatientId { get; private set; }

    /// <summary>Which arch.</summary>
    public Jaw Jaw { get; private set; }

    /// <summary>Slot, prescription, ties and bonded teeth.</summary>
    public Appliance Appliance { get; private set; } = null!; // set by Begin and by the storage, never null outside

    /// <summary>Bonding day.</summary>
    public DateOnly BegunOn { get; private set; }

    /// <summary>Debonding day; null while the appliance is on.</summary>
    public DateOnly? EndedOn { get; private set; }

    /// <summary>Positions on bonding day; a tooth not named stood in its place.</summary>
    public ToothMap<ToothOffset> StartedFrom { get; private set; } = ToothMap<ToothOffset>.Empty;

    /// <summary>Changes with every save.</summary>
    public Guid Revision { get; private set; }

    /// <summary>The treatment of an arch from its bonding day.</summary>
    /// <exception cref="RuleBrokenException">A tooth of the other arch, a position out of range, or fewer than two
    /// bonded teeth.</exception>
    public static ArchTreatment Begin(
        Guid patient, Jaw jaw, Appliance appliance, DateOnly on, ToothMap<ToothOffset> positions)
    {
        CheckTeeth(jaw, appliance.Bonded);
        CheckEnough(appliance.Bonded);
        CheckPositions(jaw, positions);
        return new ArchTreatment
        {
            Id = Guid.CreateVersion7(),
            PatientId = patient,
            Jaw = jaw,
            Appliance = appliance,
            BegunOn = on,
            StartedFrom = positions,
        };
    }

    /// <summary>Stops a second appliance on an arch that carries one.</summary>
    /// <param name="jaw">The arch.</param>
    /// <param name="all">All treatments of the patient.</param>
    /// <exception cref="RuleBrokenException">The arch carries an appliance.</exception>
    public static void CheckFree(Jaw jaw, IEnumerable<ArchTreatment> all) =>
        PracticeRules.AnArchCarriesOneAppliance.Keep(
            !all.Any(one => one.Jaw == jaw && one.EndedOn is null),
            $"The {jaw.Word()} arch carries an appliance already. Note which teeth are bonded, or take it off first.");

    /// <summary>Notes which teeth carry a bracket from now on.</summary>
    /// <exception cref="RuleBrokenException">A tooth of the other arch, or fewer than two.</exception>
    public void Rebond(Listing<ToothNumber> bonded)
    {
        CheckTeeth(Jaw, bonded);
        CheckEnough(bonded);
        Appliance = Appliance with { Bonded = bonded };
    }

    /// <summary>Takes the appliance off.</summary>
    public void Debond(DateOnly on) => EndedOn = on;

    /// <summary>Stops teeth of the other arch and positions that nobody can have.</summary>
    internal static void CheckPositions(Jaw jaw, ToothMap<ToothOffset> positions)
    {
        CheckTeeth(jaw, positions.Teeth);
        foreach ((ToothNumber tooth, ToothOffset offset) in positions)
        {
            PracticeRules.APositionIsPlausible.Keep(
                offset.IsPlausible,
                $"The position of the {tooth.Name} (ISO {tooth}) is out of range: up to "
                + $"{ToothOffset.LargestShiftMm:0} mm and {ToothOffset.LargestTurnDegrees:0}° are taken.");
        }
    }

    /// <summary>Stops an arch that no wire could lie in.</summary>
    internal static void CheckEnough(IEnumerable<ToothNumber> bonded) =>
        PracticeRules.BondedTeethBelongToTheirArch.Keep(
            bonded.Distinct().Count() >= 2, "A wire needs two bonded teeth at least.");

    /// <summary>Stops teeth of the other arch.</summary>
    internal static void CheckTeeth(Jaw jaw, IEnumerable<ToothNumber> teeth)
    {
        foreach (ToothNumber tooth in teeth)
        {
            PracticeRules.BondedTeethBelongToTheirArch.Keep(
                tooth.IsUpper == (jaw == Jaw.Upper) && tooth.Position <= 7,
                $"The {tooth.Name} (ISO {tooth}) has no place on the {jaw.Word()} arch.");
        }
    }
}
