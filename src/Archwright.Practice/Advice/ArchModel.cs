using System.Collections.Immutable;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Dentition.Ties;
using Archwright.Mechanics.Slots;
using Archwright.Practice.Courses;
using Archwright.Practice.Values;

namespace Archwright.Practice.Advice;

/// <summary>From what a practice notes of an arch to what the mechanics computes with.</summary>
public static class ArchModel
{
    /// <summary>Builds the arch of some inputs with a wire.</summary>
    /// <param name="inputs">Slot, bonded teeth, positions, ties and ends.</param>
    /// <param name="wireId">A wire of the catalogue.</param>
    /// <exception cref="ArgumentException">The wire is not in the catalogue, or the inputs do not hold
    /// together.</exception>
    public static ArchSetup Build(AdviceInputs inputs, string wireId) => ArchBuilder.Build(Request(inputs, wireId));

    /// <summary>Positions that show five contact displacements of the front teeth; the back teeth stay as they
    /// are.</summary>
    /// <param name="inputs">The arch; its positions of the front teeth are replaced.</param>
    /// <param name="contacts">From the patient's right to the left [mm].</param>
    /// <exception cref="ArgumentException">Crowns cannot stand so, or a front tooth has no bracket.</exception>
    public static ToothMap<ToothOffset> FromContacts(AdviceInputs inputs, IReadOnlyList<double> contacts)
    {
        IReadOnlyList<ToothNumber> front = inputs.Jaw.FrontTeeth();
        ArchSetup arch = ArchBuilder.Build(Request(inputs, AnyWire) with
        {
            Contacts = [.. contacts],
            Positions = ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty,
        });
        return ToothMap<ToothOffset>.Of(inputs.Positions.Where(pair => !front.Contains(pair.Key)).Concat(
            arch.Teeth.Zip(arch.Offsets).Where(pair => front.Contains(pair.First))
                .Select(pair => KeyValuePair.Create(pair.First, ToothOffset.From(pair.Second)))));
    }

    /// <summary>Where the slot of each place of an arch belongs, whatever is noted of its tooth.</summary>
    public static IReadOnlyDictionary<ToothNumber, SlotFrame> Places(Jaw jaw)
    {
        ArchSetup whole = ArchBuilder.Build(new ArchRequest { Jaw = jaw, Slot = SlotSize.In022, WireId = AnyWire });
        return whole.Teeth.Zip(whole.Slots).ToDictionary(pair => pair.First, pair => pair.Second.Rest);
    }

    private static ArchRequest Request(AdviceInputs inputs, string wireId)
    {
        if (inputs.Bonded.Count < 2)
            throw new ArgumentException("A wire needs two bonded teeth at least.", nameof(inputs));

        IEnumerable<ToothNumber> places = inputs.Jaw.Teeth().Where(tooth => tooth.Position <= 7);
        ToothNumber[] unbonded =
            [.. inputs.Bare.Where(pair => pair.Value == BareTooth.NotBonded).Select(pair => pair.Key)];
        ToothNumber[] there = [.. inputs.Bonded.Concat(unbonded)];
        return new ArchRequest
        {
            Jaw = inputs.Jaw,
            Slot = Slot(inputs.SlotCode),
            WireId = wireId,
            Tie = Tie.None,
            Ties = inputs.Ties.Where(pair => inputs.Bonded.Contains(pair.Key))
                .ToImmutableDictionary(pair => pair.Key, pair => Figures(pair.Value)),
            Ends = inputs.Ends,
            Unbonded = [.. unbonded],
            Without = [.. places.Except(there)],
            Positions = inputs.Positions.Where(pair => there.Contains(pair.Key))
                .ToImmutableDictionary(pair => pair.Key, pair => pair.Value.ToClinical()),
        };
    }

    /// <summary>Irregularity of the front teeth at some positions [mm]; null when one of the six is not
    /// there.</summary>
    /// <param name="treatment">The arch.</param>
    /// <param name="bare">Places noted to hold no bracket; null for none. A crown without one counts.</param>
    /// <param name="positions">Where the teeth stand.</param>
    public static double? Irregularity(
        ArchTreatment treatment, ToothMap<BareTooth>? bare, ToothMap<ToothOffset> positions) =>
        Build(
            new AdviceInputs
            {
                Jaw = treatment.Jaw,
                SlotCode = SlotSize.In022.Code,
                Bonded = treatment.Appliance.BondedBut(bare),
                Bare = bare ?? ToothMap<BareTooth>.Empty,
                Positions = positions,
                Ties = ToothMap<TieKind>.Empty,
                Stock = Listing<string>.Empty,
                Alerts = Listing<People.AlertKind>.Empty,
            },
            AnyWire).Irregularity?.Sum;

    /// <summary>A tie with the usual figures of its kind.</summary>
    public static Tie Figures(TieKind kind)
    {
        TieDefault usual = TieDefaults.Of(kind);
        return kind switch
        {
            TieKind.None => Tie.None,
            TieKind.Closed => Tie.Closed(usual.Holds),
            TieKind.Partial => Tie.Partial(usual.Reach, usual.Holds),
            _ => Tie.Seating(kind, usual.SeatingForce, usual.Stiffness, usual.Holds),
        };
    }

    // The index looks at slots alone; the builder wants a wire all the same.
    private const string AnyWire = "niti-014";

    private static SlotSize Slot(string code) =>
        code == SlotSize.In018.Code ? SlotSize.In018
        : code == SlotSize.In022.Code ? SlotSize.In022
        : throw new ArgumentException($"The slot is '{code}'; 018 and 022 are known.", nameof(code));
}
