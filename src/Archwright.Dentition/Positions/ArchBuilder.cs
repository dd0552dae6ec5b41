using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>Builds an arch from the tables: average crowns side by side on an arch curve, one slot on each.</summary>
/// <remarks>
/// Planned places: the crown centres lie on the arch curve at their places along it; each slot centre lies on the
/// normal through its crown's centre, labially by the jaw's slot offset, so that all slot centres lie on the
/// parallel of the curve. The slot's axis is tangent to that curve and its outward direction normal to it in the
/// plane of the arch (z = 0; y = 0 is the line of the second molars). A preadjusted slot lies just so when its
/// tooth stands at its prescribed tip and torque; hence the wire is passive there, and angles enter as offsets of
/// teeth that are not there yet.
/// Present places: contact displacements, then offsets from crown angles and offsets
/// given, added part by part. A tooth left out leaves its place open.
/// Left out: curve of Spee, asymmetry of the form, a patient's own crown widths.
/// </remarks>
public static class ArchBuilder
{
    private const double LargestContact = 10;

    /// <summary>Builds an arch.</summary>
    /// <param name="request">What from.</param>
    /// <param name="catalogue">Where the wire is looked up; null for the default one.</param>
    /// <exception cref="ArgumentException">The request does not hold together: an unknown wire, a tooth of the other
    /// jaw, no five contact displacements, displacements that average crowns cannot have, an arch too short; the
    /// message says which and what is allowed.</exception>
    public static ArchSetup Build(ArchRequest request, WireCatalogue? catalogue = null)
    {
        CatalogueWire wire = FindWire(request, catalogue ?? WireCatalogue.Default);
        ArchForm form = request.Form ?? DefaultArches.Of(request.Jaw);
        CheckTeeth(request);
        ImmutableArray<ToothNumber> teeth = [.. Teeth(request)];
        ImmutableDictionary<ToothNumber, SlotFrame> rest = RestFrames(request.Jaw, form);
        ImmutableDictionary<ToothNumber, ClinicalOffset> contacts = FromContacts(request, rest);
        ImmutableArray<ClinicalOffset> offsets = [.. teeth.Select(tooth => Offset(request, contacts, tooth))];

        return new ArchSetup
        {
            Jaw = request.Jaw,
            Wire = wire,
            Form = form,
            Teeth = teeth,
            Offsets = offsets,
            Arrangement = new Arrangement
            {
                Wire = wire.Wire,
                Ends = request.Ends,
                Temperature = request.Temperature,
                Slots = [.. teeth.Select((tooth, i) => Slot(request, tooth, rest[tooth], offsets[i]))],
            },
        };
    }

    private static Slot Slot(ArchRequest request, ToothNumber tooth, SlotFrame rest, ClinicalOffset offset)
    {
        var slot = new Slot
        {
            Label = tooth.ToIso(),
            Rest = rest,
            Actual = ClinicalAxes.For(tooth).Displaced(rest, offset),
            Width = Brackets.SlotWidth(tooth).Value,
            Height = request.Slot.Height,
            Depth = request.Slot.Depth,
            Tie = request.Ties.GetValueOrDefault(tooth, request.Tie),
        };
        return request.Unbonded.Contains(tooth) ? slot.Unbonded() : slot;
    }

    private static ClinicalOffset Offset(
        ArchRequest request, ImmutableDictionary<ToothNumber, ClinicalOffset> contacts, ToothNumber tooth)
    {
        ClinicalOffset offset = contacts.GetValueOrDefault(tooth, ClinicalOffset.Zero);
        if (request.Crowns.TryGetValue(tooth, out CrownAngles? crown))
            offset = offset.Plus(request.Prescription.OffsetOf(tooth, crown));
        return offset.Plus(request.Positions.GetValueOrDefault(tooth, ClinicalOffset.Zero));
    }

    private static IEnumerable<ToothNumber> Teeth(ArchRequest request) => Placed(request.Jaw)
        .Where(tooth => !request.Without.Contains(tooth) && (request.SecondMolars || tooth.Position < 7));

    private static IEnumerable<ToothNumber> Placed(Jaw jaw) => jaw.Teeth().Where(tooth => tooth.Position <= 7);

    private static ImmutableDictionary<ToothNumber, SlotFrame> RestFrames(Jaw jaw, ArchForm form)
    {
        IReadOnlyList<double> arcs = CrownRow.ArcsFromMidline(jaw);
        if (form.Perimeter / 2 < arcs[^1])
        {
            throw new ArgumentException(
                $"The arch is {form.Perimeter:0.0} mm long; average crowns need {2 * arcs[^1]:0.0} mm to the middle of "
                + "the second molars. Give a wider or deeper arch.", nameof(form));
        }

        double front = form.DepthAt(form.AcrossAt(arcs[^1]));
        double offset = DefaultArches.SlotOffset(jaw).Value;
        return Placed(jaw).ToImmutableDictionary(
            tooth => tooth, tooth => form.FrameAt(CrownRow.Arc(tooth), offset, front));
    }

    private static ImmutableDictionary<ToothNumber, ClinicalOffset> FromContacts(
        ArchRequest request, ImmutableDictionary<ToothNumber, SlotFrame> rest)
    {
        if (request.Contacts.IsDefaultOrEmpty)
            return ImmutableDictionary<ToothNumber, ClinicalOffset>.Empty;

        CheckContacts(request);
        IReadOnlyList<ToothNumber> teeth = request.Jaw.FrontTeeth();
        var inversion = new ContactInversion(teeth, [.. teeth.Select(tooth => rest[tooth])]);
        ImmutableArray<ClinicalOffset> offsets = inversion.Solve(request.Contacts)
            ?? throw new ArgumentException(
                $"Average crowns cannot stand with contact displacements of {string.Join(", ", request.Contacts)} mm. "
                + "Give smaller displacements, or the teeth's own positions.", nameof(request));
        return teeth.Zip(offsets).ToImmutableDictionary(pair => pair.First, pair => pair.Second);
    }

    private static void CheckContacts(ArchRequest request)
    {
        if (request.Contacts.Length != 5)
        {
            throw new ArgumentException(
                $"{request.Contacts.Length} contact displacements were given; there are five between the six front "
                + "teeth, from the patient's right to the left.", nameof(request));
        }

        foreach (double contact in request.Contacts)
        {
            if (!(contact >= 0 && contact <= LargestContact))
            {
                throw new ArgumentException(
                    $"A contact displacement is {contact} mm; it lies between 0 and {LargestContact} mm.",
                    nameof(request));
            }
        }

        if (request.Jaw.FrontTeeth().FirstOrDefault(request.Without.Contains) is { Iso: > 0 } missing)
        {
            throw new ArgumentException(
                $"Contact displacements need all six front teeth, but {missing} is left out. Give the teeth's own "
                + "positions in place of displacements.", nameof(request));
        }
    }

    private static CatalogueWire FindWire(ArchRequest request, WireCatalogue catalogue) =>
        catalogue.TryFind(request.WireId, out CatalogueWire? wire)
            ? wire
            : throw new ArgumentException(
                $"The catalogue has no wire '{request.WireId}'; ids look like ss-019x025 or niti-014.",
                nameof(request));

    private static void CheckTeeth(ArchRequest request)
    {
        HashSet<ToothNumber> placed = [.. Placed(request.Jaw)];
        IEnumerable<ToothNumber> named = request.Without.Concat(request.Unbonded)
            .Concat(request.Positions.Keys).Concat(request.Crowns.Keys)
            .Concat(request.Ties.Keys);
        foreach (ToothNumber tooth in named)
        {
            if (!placed.Contains(tooth))
            {
                throw new ArgumentException(
                    $"{tooth} ({tooth.Name}) has no place on the {request.Jaw.Word()} arch, which runs from second "
                    + "molar to second molar.", nameof(request));
            }
        }

        foreach ((ToothNumber tooth, ClinicalOffset offset) in request.Positions)
        {
            if (!offset.IsFinite)
                throw new ArgumentException($"The position of {tooth} is not a finite number.", nameof(request));
        }

        if (Teeth(request).Take(2).Count() < 2)
            throw new ArgumentException("An arch needs two teeth with slots at least.", nameof(request));
    }
}
