using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Decisions;

/// <summary>One arch as it is seen: slots with their ties, and the tooth of each.</summary>
public sealed record ArchToday
{
    /// <summary>Slots, ties, ends, temperature. Its wire is replaced by each wire that is looked at.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>Tooth of each slot, in the same order.</summary>
    public required ImmutableArray<ToothNumber> Teeth { get; init; }

    /// <summary>Lips and cheeks; none unless they are asked for.</summary>
    public SoftTissue SoftTissue { get; init; } = SoftTissue.None;

    /// <summary>How each wire that is looked at rubs; null: as the slots say.</summary>
    public FrictionChoice? Friction { get; init; }

    /// <summary>Largest coefficient of friction of a slot, where it does not depend on the alloy of a wire.</summary>
    public double MostFriction => Friction?.Coefficient ?? Arrangement.Slots.Max(slot => slot.Friction);

    /// <summary>An arch that was built from tables.</summary>
    public static ArchToday Of(ArchSetup arch)
    {
        ArgumentNullException.ThrowIfNull(arch);
        return new ArchToday { Arrangement = arch.Arrangement, Teeth = arch.Teeth };
    }

    /// <summary>Clinical axes of each slot.</summary>
    public ImmutableArray<ClinicalAxes> Axes => [.. Teeth.Select(ClinicalAxes.For)];

    /// <summary>How each tooth is off its planned place.</summary>
    public ImmutableArray<ClinicalOffset> Offsets =>
    [
        .. Teeth.Select((tooth, i) => ClinicalAxes.For(tooth).Between(
            Arrangement.Slots[i].Rest, Arrangement.Slots[i].Actual)),
    ];

    /// <summary>How far each crown is from its planned place, as it is seen at its sides [mm]; see
    /// <see cref="Distance"/>.</summary>
    public ImmutableArray<double> Distances => [.. Teeth.Zip(Offsets, Distance)];

    /// <summary>Index of the tooth with a bracket that is farthest off.</summary>
    public int FarthestOff => Bonded.MaxBy(i => Distances[i]);

    /// <summary>How far that tooth is off [mm]; no wire brings in a crown without a bracket, which does not count.
    /// </summary>
    public double Farthest => Bonded.Max(i => Distances[i]);

    /// <summary>Indices of the teeth with a bracket.</summary>
    public IEnumerable<int> Bonded => Enumerable.Range(0, Teeth.Length).Where(i => Arrangement.Slots[i].IsBonded);

    /// <summary>Crowns without a bracket.</summary>
    public IEnumerable<ToothNumber> Unbonded => Teeth.Where((_, i) => !Arrangement.Slots[i].IsBonded);

    /// <summary>Teeth between the first and the last of this arch of which nobody said whether they are there: asked
    /// for, and taken as not there.</summary>
    public ImmutableArray<ToothNumber> Unsaid { get; init; } = [];

    /// <summary>The slots with a wire in them that rubs as its alloy does.</summary>
    /// <param name="of">Which wire.</param>
    /// <param name="wire">Its section and law.</param>
    internal Arrangement With(CatalogueWire of, Wire wire)
    {
        Arrangement arrangement = Arrangement with { Wire = wire };
        return Friction is { } friction ? arrangement.WithFriction(friction.On(of.Alloy)) : arrangement;
    }

    /// <summary>The coefficient that is chosen for a wire; null where the slots say it.</summary>
    internal double? FrictionOf(CatalogueWire wire) => Friction?.On(wire.Alloy);

    /// <summary>How far a crown is from its planned place, as it is seen at its sides: the shift of the slot, and each
    /// turn by half the width of the crown [mm].</summary>
    /// <param name="tooth">Which tooth.</param>
    /// <param name="offset">How it is off.</param>
    /// <remarks>What a root is off by torque or tip is not in it: a tooth that tipped into line counts as in
    /// line.</remarks>
    public static double Distance(ToothNumber tooth, ClinicalOffset offset)
    {
        ArgumentNullException.ThrowIfNull(offset);
        double arm = Anatomy.Of(tooth).CrownWidth.Value / 2;
        return Math.Sqrt(
            Square(offset.Labial) + Square(offset.Occlusal) + Square(offset.Mesial)
            + Square(arm * offset.Rotation) + Square(arm * offset.Tip) + Square(arm * offset.Torque));
    }

    /// <summary>The thread by which a slot is tied at a distance: as long as the slot is off, less the pull
    /// [mm].</summary>
    /// <param name="slot">Index.</param>
    /// <param name="pull">How far it pulls the wire toward the tooth [mm].</param>
    internal double Thread(int slot, double pull)
    {
        ClinicalOffset off = Offsets[slot];
        double shift = Math.Sqrt(Square(off.Labial) + Square(off.Occlusal) + Square(off.Mesial));
        return Math.Max(ShortestThread, shift - pull);
    }

    private const double ShortestThread = 0.3;

    /// <summary>This arch with some slots tied at a distance.</summary>
    /// <param name="slots">Indices.</param>
    /// <param name="pull">How far the ties pull the wire toward the teeth [mm].</param>
    internal ArchToday Loosened(IReadOnlyCollection<int> slots, double pull) => slots.Count == 0 ? this : this with
    {
        Arrangement = Arrangement with
        {
            Slots =
            [
                .. Arrangement.Slots.Select((slot, i) =>
                    slots.Contains(i) ? slot with { Tie = Tie.Partial(Thread(i, pull)) } : slot),
            ],
        },
    };

    /// <summary>This arch with one tooth farther off.</summary>
    /// <param name="slot">Index.</param>
    /// <param name="more">What is added to how it is off.</param>
    internal ArchToday Shifted(int slot, ClinicalOffset more)
    {
        ClinicalAxes axes = ClinicalAxes.For(Teeth[slot]);
        Slot before = Arrangement.Slots[slot];
        return this with
        {
            Arrangement = Arrangement with
            {
                Slots = Arrangement.Slots.SetItem(
                    slot, before with { Actual = axes.Displaced(before.Rest, Offsets[slot].Plus(more)) }),
            },
        };
    }

    private static double Square(double x) => x * x;
}
