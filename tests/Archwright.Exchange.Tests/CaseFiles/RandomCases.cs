using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Exchange.CaseFiles;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;
using CsCheck;

namespace Archwright.Exchange.Tests.CaseFiles;

/// <summary>Random cases that a file can say: whole or partial arches on an ellipse and straight benches, with every
/// kind of tie, hold, end, rest shape, offset, step and wire.</summary>
internal static class RandomCases
{
    private static readonly Gen<ClinicalOffset> Offset = Gen.Select(
        Gen.Double[-1.5, 1.5], Gen.Double[-3, 3], Gen.Double[-0.8, 0.8], Gen.Double[-40, 40], Gen.Double[-20, 20],
        Gen.Double[-20, 20],
        (l, o, m, r, t, q) => ClinicalOffset.FromDegrees(l, o, m, r, t, q));

    // Rounded like a person's figures, or with all their digits.
    private static readonly Gen<ClinicalOffset> AnyOffset = Gen.Frequency(
        (1, Gen.Const(ClinicalOffset.Zero)),
        (2, Offset),
        (2, Offset.Select(o => ClinicalOffset.FromDegrees(
            Math.Round(o.Labial, 1), Math.Round(o.Occlusal, 1), Math.Round(o.Mesial, 1), Math.Round(o.Rotation * 57),
                0, 5))));

    private static readonly Gen<double> HoldsN = Gen.OneOf(Gen.Const(double.PositiveInfinity), Gen.Double[1, 80]);

    private static readonly Gen<Tie> AnyTie = Gen.OneOf(
        HoldsN.Select(holds => Tie.Closed(holds)),
        Gen.Select(
            OneOf(TieKind.Steel, TieKind.Elastic, TieKind.Spring), Gen.Double[0, 5], Gen.Double[0, 2000], HoldsN,
            (kind, force, stiffness, holds) => Tie.Seating(kind, force, stiffness, holds)),
        Gen.Select(Gen.Double[0, 3], HoldsN, (reach, holds) => Tie.Partial(reach, holds)),
        Gen.Const(Tie.None));

    private static readonly Gen<(Wire Wire, string? WireId, string? AlloyId)> AnyWire = Gen.OneOf(
        Gen.Int[0, WireCatalogue.Default.Wires.Count - 1].Select(i =>
        {
            CatalogueWire wire = WireCatalogue.Default.Wires[i];
            return (wire.Wire, (string?)wire.Id, (string?)null);
        }),
        Gen.Select(Gen.Int[0, WireCatalogue.Default.Alloys.Count - 1], Gen.Double[0.2, 0.5], (i, d) =>
        {
            CatalogueAlloy alloy = WireCatalogue.Default.Alloys[i];
            return (new Wire(Section.Round(d), alloy.Alloy), (string?)null, (string?)alloy.Id);
        }),
        Gen.Select(Gen.Double[1e4, 2.5e5], Gen.Double[0, 0.5], Gen.Double[0.3, 0.5], Gen.Double[0.3, 0.6],
            Gen.Double[0, 0.1],
            (e, nu, h, w, r) =>
                (new Wire(Section.Rectangular(h, w, r), new LinearElastic(e, nu)), (string?)null, (string?)null)),
        Gen.Select(Gen.Double[1e4, 2.5e5], Gen.Double[0, 0.5], Gen.Double[100, 3000], Gen.Double[0, 9e3],
            (e, nu, yield, hardening) => (new Wire(Section.Round(0.4), new ElasticPlastic(e, nu, yield, hardening)),
                (string?)null, (string?)null)),
        Gen.Select(Gen.Double[200, 600], Gen.Double[0, 100], Gen.Double[-150, 100], Gen.Double[0, 100],
            Gen.Double[0, 0.3],
            (start, rise, finish, reverseRise, alpha) => (new Wire(Section.Round(0.4), new Superelastic(
                new SuperelasticFigures
                {
                    Poisson = 0.33, ReferenceTemperature = 36, YoungAustenite = 50_000, YoungMartensite = 30_000,
                    TransformationStrain = 0.045, ForwardStart = start, ForwardFinish = start + rise,
                    ReverseFinish = finish, ReverseStart = finish + reverseRise, ClausiusClapeyron = 6.5,
                    Asymmetry = alpha,
                })),
                (string?)null, (string?)null)));

    private sealed record SlotDraw(ClinicalOffset Offset, bool GivenAsFrame, Tie Tie, Hold Hold, double Width,
        bool StepMoves);

    private static readonly Gen<SlotDraw> AnySlot = Gen.Select(
        AnyOffset, Gen.Bool, AnyTie,
        Gen.Frequency(
            (5, Gen.Const(Hold.Walls)), (2, Gen.Const(Hold.EdgesOnly)), (1, Gen.Const(Hold.Point)),
            (1, Gen.Const(Hold.EdgePoints)), (1, Gen.Const(Hold.Clamped))),
        Gen.Double[1.5, 3.2], Gen.Bool,
        (offset, frame, tie, hold, width, moves) => new SlotDraw(offset, frame, tie, hold, width, moves));

    private static readonly Gen<string> Title = Gen.String[Gen.Char["aZ 0Äéß漢\"\\/<>&'"], 0, 30];

    /// <summary>Any such case.</summary>
    public static Gen<CaseFile> Any { get; } = Gen.Select(
        OneOf(CaseFile.Upper, CaseFile.Lower, CaseFile.Bench), AnySlot.Array[2, 14], AnyWire,
        OneOf(WireEnds.Free, WireEnds.Stopped, WireEnds.Cinched), Gen.Int[0, 2], Gen.Double[-5, 80], Title, Gen.Bool,
        Build);

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static CaseFile Build(
        string jaw,
        SlotDraw[] draws,
        (Wire Wire, string? WireId, string? AlloyId) wire,
        WireEnds ends,
        int rest,
        double temperature,
        string title,
        bool hasVisit)
    {
        draws[0] = draws[0] with { Hold = Hold.EdgePoints };                 // one slot at least holds the wire
        ToothNumber?[] teeth = Teeth(jaw, draws.Length);
        ImmutableArray<ClinicalAxes> axes = [
            .. teeth.Select(t => t is { } tooth ? ClinicalAxes.For(tooth) : ClinicalAxes.Bench)];
        SlotFrame[] rests = [.. Enumerable.Range(0, draws.Length).Select(i => Rest(jaw, i, draws.Length))];
        var slots = ImmutableArray.CreateBuilder<Slot>();
        for (int i = 0; i < draws.Length; i++)
        {
            bool walled = draws[i].Hold is Hold.Walls or Hold.EdgesOnly;
            var slot = new Slot
            {
                Label = teeth[i]?.ToIso() ?? $"slot {i}",
                Rest = rests[i],
                Actual = axes[i].Displaced(rests[i], draws[i].Offset),
                Width = draws[i].Width,
                Height = walled ? Math.Max(0.5588, wire.Wire.Section.Thickness) : 0,
                Depth = walled ? Math.Max(0.7112, wire.Wire.Section.Width) : 0,
                Tie = walled ? draws[i].Tie : Tie.Closed(),
                Hold = draws[i].Hold,
            };
            // Every eleventh width makes a crown without a bracket, on arches; the first slot holds the wire.
            slots.Add(i > 0 && jaw != CaseFile.Bench && (int)(100 * draws[i].Width) % 11 == 0 ? slot.Unbonded() : slot);
        }

        Complete(slots);
        int[] moved = [.. Enumerable.Range(0, draws.Length).Where(i => draws[i].StepMoves)];
        ImmutableArray<(int, SlotFrame)> moves =
            [.. moved.Select(i => (i, axes[i].Displaced(rests[i], new ClinicalOffset(Labial: 0.1 * i))))];
        return new CaseFile
        {
            Title = title,
            Jaw = jaw,
            Teeth = [.. teeth],
            Axes = axes,
            Offsets = [.. draws.Select(d => d.GivenAsFrame ? null : d.Offset)],
            Arrangement = new Arrangement
            {
                Wire = wire.Wire,
                Ends = ends,
                Temperature = temperature,
                Slots = slots.ToImmutable(),
                Rest = rest switch
                {
                    0 => new RestShape.ThroughRestSlots(),
                    1 when jaw == CaseFile.Bench => new RestShape.Straight(),
                    1 => new RestShape.Points([.. rests.Select(r => r.Centre)], []),
                    _ => new RestShape.Points([.. rests.Select(r => r.Centre)], [.. rests.Select(r => r.Outward)]),
                },
            },
            Then = moved.Length == 0 ? [] : [new Step(10, []), new Step(null, moves), new Step(55, moves)],
            StepOffsets = moved.Length == 0 ? []
                : [[], [.. moved.Select(i => new ClinicalOffset(Labial: 0.1 * i))], []],
            WireId = wire.WireId,
            AlloyId = wire.AlloyId,
            Absent = hasVisit ? Outside(jaw, teeth) : [],
            SoftTissue = hasVisit ? temperature / 10 + 1 : 0,
            VisitJson = hasVisit ? """{"present":null,"slot_in":0.022,"alerts":["nickel"]}""" : null,
        };
    }

    // What a file does not say of a bare crown is that of the first channel.
    private static void Complete(ImmutableArray<Slot>.Builder slots)
    {
        Slot? channel = slots.FirstOrDefault(slot => slot.IsBonded && slot.Height > 0);
        for (int i = 1; i < slots.Count; i++)
        {
            if (!slots[i].IsBonded)
                slots[i] = slots[i] with { Height = channel?.Height ?? 0, Depth = channel?.Depth ?? 0 };
        }
    }

    private static ImmutableArray<AbsentTooth> Outside(string jaw, ToothNumber?[] teeth) =>
        jaw == CaseFile.Bench ? [] :
        [
            .. (jaw == CaseFile.Upper ? ToothNumber.UpperArch : ToothNumber.LowerArch).Where(t => !teeth.Contains(t))
                .Take(1).Select(tooth => new AbsentTooth(tooth, AbsentTooth.Unerupted)),
        ];

    private static ToothNumber?[] Teeth(string jaw, int count) => jaw == CaseFile.Bench
        ? new ToothNumber?[count]
        : [.. (jaw == CaseFile.Upper ? ToothNumber.UpperArch : ToothNumber.LowerArch)
            .Skip((16 - count) / 2).Take(count).Select(t => (ToothNumber?)t)];

    // Slots of an arch evenly over a half ellipse of 28 by 46 mm; of a bench 8 mm apart on a line.
    private static SlotFrame Rest(string jaw, int index, int count)
    {
        double middle = index - (count - 1) / 2.0;
        if (jaw == CaseFile.Bench)
            return SlotFrame.Create(new Vector3(-8 * middle, 0, 0), new Vector3(-1, 0, 0), new Vector3(0, 1, 0));

        double t = Math.PI / 2 + middle * Math.PI / 16;
        var along = new Vector3(-28 * Math.Sin(t), 46 * Math.Cos(t), 0);
        return SlotFrame.Create(
            new Vector3(28 * Math.Cos(t), 46 * Math.Sin(t), 0), along, new Vector3(along.Y, -along.X, 0));
    }
}
