using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Crowns;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Patients;

/// <summary>A made-up lower arch that lacks room in front, for studies and checks: incisors overlap like shingles on
/// an arch too short for them, and the wire's form is the wider one that they are to stand on.</summary>
public sealed record CrowdedArch
{
    private const double MolarWidth = 53;
    private const double CurveWidth = 63;
    private const int MostRounds = 2000;
    private const double SmallOverlap = 0.02;

    /// <summary>Room missing between the canines' far sides, along the arch [mm].</summary>
    public double Missing { get; init; } = 2.6;

    /// <summary>How much narrower than planned the arch is at the canines [mm].</summary>
    public double Narrower { get; init; } = 1.9;

    /// <summary>Width of the planned arch across the canines' crown centres [mm]; with average crowns no more than
    /// 27.</summary>
    public double PlannedWidth { get; init; } = 26.4;

    /// <summary>A wire of the catalogue.</summary>
    public string WireId { get; init; } = "niti-014";

    /// <summary>The same seed and number give the same arch.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Which of the arches of this seed.</summary>
    public int Number { get; init; }

    /// <summary>The arch with the wire, to be looked ahead at.</summary>
    /// <param name="weeks">How far.</param>
    /// <exception cref="ArgumentException">No arch has these widths and this length; the wire is not in the
    /// catalogue.</exception>
    public ForecastRequest Request(int weeks)
    {
        var chance = new Chance(Seed, Number);
        IReadOnlyList<double> arcs = CrownRow.ArcsFromMidline(Jaw.Lower);
        PolynomialArch planned = PolynomialArch.WithLengths(PlannedWidth, arcs[2], MolarWidth, arcs[6]);
        PolynomialArch present = PolynomialArch.WithLengths(
            PlannedWidth - Narrower, arcs[2] - Missing / 2, MolarWidth, arcs[6] - Missing / 2);
        ArchSetup arch = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Lower, Slot = SlotSize.In022, WireId = WireId,
            Form = new PolynomialArch(planned.A, planned.B, CurveWidth),
        });
        SlotFrame[] places = [.. arch.Teeth.Select(tooth => Place(tooth, present, arcs))];
        Shingle(arch.Teeth, places, chance);
        Separate(arch.Teeth, places);
        return ForecastRequest.Of(arch, weeks) with
        {
            Arrangement = arch.Arrangement.At(places),
        };
    }

    // On the short arch, in order: front teeth closer together, the others moved up.
    private SlotFrame Place(ToothNumber tooth, PolynomialArch present, IReadOnlyList<double> arcs)
    {
        double front = present.DepthAt(present.AcrossAt(arcs[6] - Missing / 2));
        var longer = new PolynomialArch(present.A, present.B, CurveWidth);
        double arc = Math.Abs(CrownRow.Arc(tooth));
        double at = tooth.IsAnterior ? arc * (arcs[2] - Missing / 2) / arcs[2] : arc - Missing / 2;
        return longer.FrameAt(tooth.IsRight ? at : -at, DefaultArches.SlotOffset(Jaw.Lower).Value, front);
    }

    // Incisors by turns before and behind the line, a little high or low, a little turned.
    private static void Shingle(ImmutableArray<ToothNumber> teeth, SlotFrame[] places, Chance chance)
    {
        double sign = chance.Uniform() < 0.5 ? -1 : 1;
        for (int i = 0; i < places.Length; i++)
        {
            if (teeth[i].Position > 2)
                continue;

            sign = -sign;
            SlotFrame frame = places[i];
            places[i] = frame.Moved(
                frame.Outward * (sign * (0.3 + 0.3 * Math.Abs(chance.Normal())))
                    + frame.Third * (0.3 * chance.Normal()),
                frame.Third * (0.15 * chance.Normal()));
        }
    }

    // Pushes overlapping incisors apart until none overlaps; the other teeth stay.
    private static void Separate(ImmutableArray<ToothNumber> teeth, SlotFrame[] places)
    {
        for (int round = 0; round < MostRounds; round++)
        {
            double deepest = 0;
            for (int i = 0; i + 1 < places.Length; i++)
            {
                if (teeth[i].IsAnterior && teeth[i + 1].IsAnterior)
                    deepest = Math.Max(deepest, SeparateTwo(teeth, places, i));
            }

            if (deepest < SmallOverlap)
                return;
        }
    }

    private static double SeparateTwo(ImmutableArray<ToothNumber> teeth, SlotFrame[] places, int i)
    {
        var contact = new CrownContact(teeth[i], teeth[i + 1]);
        if (!contact.TryPush(places[i], places[i + 1], out CrownPush push))
            return 0;

        double depth = -contact.Room(places[i], places[i + 1]);
        bool first = teeth[i].Position <= 2;
        bool second = teeth[i + 1].Position <= 2;
        double way = depth * (first && second ? 0.3 : 0.6);
        if (first)
            places[i] = places[i].Moved(push.Normal * -way, default);
        if (second)
            places[i + 1] = places[i + 1].Moved(push.Normal * way, default);
        return depth;
    }
}
