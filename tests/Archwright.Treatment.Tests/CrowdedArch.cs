using System.Collections.Immutable;
using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Crowns;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Treatment.Tests;

/// <summary>A lower arch that lacks room in front: incisors overlap like shingles on an arch too short for them, and
/// the wire's form is the wider one they are to stand on.</summary>
internal static class CrowdedArch
{
    public static ForecastRequest Of(
        double missing, double narrower, double formCanineWidth, string wireId, int weeks, Chance chance)
    {
        IReadOnlyList<double> arcs = CrownRow.ArcsFromMidline(Jaw.Lower);
        PolynomialArch planned = PolynomialArch.WithLengths(formCanineWidth, arcs[2], 53, arcs[6]);
        PolynomialArch present = PolynomialArch.WithLengths(
            formCanineWidth - narrower, arcs[2] - missing / 2, 53, arcs[6] - missing / 2);
        ArchSetup arch = ArchBuilder.Build(new ArchRequest
        {
            Jaw = Jaw.Lower, Slot = SlotSize.In022, WireId = wireId,
            Form = new PolynomialArch(planned.A, planned.B, 63),
        });
        double offset = DefaultArches.SlotOffset(Jaw.Lower).Value;
        double front = present.DepthAt(present.AcrossAt(arcs[6] - missing / 2));
        var longer = new PolynomialArch(present.A, present.B, 63);
        SlotFrame[] places = new SlotFrame[arch.Teeth.Length];
        double sign = chance.Uniform() < 0.5 ? -1 : 1;
        for (int i = 0; i < places.Length; i++)
        {
            ToothNumber tooth = arch.Teeth[i];
            double arc = Math.Abs(CrownRow.Arc(tooth));
            double at = tooth.IsAnterior ? arc * (arcs[2] - missing / 2) / arcs[2] : arc - missing / 2;
            SlotFrame frame = longer.FrameAt(tooth.IsRight ? at : -at, offset, front);
            if (tooth.Position <= 2)
            {
                sign = -sign;
                frame = frame.Moved(
                    frame.Outward * (sign * (0.3 + 0.3 * Math.Abs(chance.Normal())))
                        + frame.Third * (0.3 * chance.Normal()),
                    frame.Third * (0.15 * chance.Normal()));
            }

            places[i] = frame;
        }

        Separate(arch.Teeth, places);
        return ForecastRequest.Of(arch, weeks) with
        {
            Arrangement = arch.Arrangement with
            {
                Slots = [.. arch.Slots.Select((slot, i) => slot with { Actual = places[i] })],
            },
        };
    }

    // Pushes overlapping crowns apart; posterior teeth and canines stay.
    private static void Separate(ImmutableArray<ToothNumber> teeth, SlotFrame[] places)
    {
        for (int round = 0; round < 2000; round++)
        {
            double deepest = 0;
            for (int i = 0; i + 1 < places.Length; i++)
            {
                if (!teeth[i].IsAnterior || !teeth[i + 1].IsAnterior)
                    continue;
                var contact = new CrownContact(teeth[i], teeth[i + 1]);
                if (!contact.TryPush(places[i], places[i + 1], out CrownPush push))
                    continue;
                double depth = -contact.Room(places[i], places[i + 1]);
                deepest = Math.Max(deepest, depth);
                bool first = teeth[i].Position <= 2;
                bool second = teeth[i + 1].Position <= 2;
                double share = first && second ? 0.5 : 1;
                if (first)
                    places[i] = places[i].Moved(push.Normal * (-depth * share * 0.6), default);
                if (second)
                    places[i + 1] = places[i + 1].Moved(push.Normal * (depth * share * 0.6), default);
            }

            if (deepest < 0.02)
                return;
        }
    }
}
