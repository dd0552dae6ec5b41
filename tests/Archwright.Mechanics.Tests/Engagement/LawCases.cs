using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Random arches for laws that hold for any arch: up to half of a millimetre and 6° out of line at every
/// tooth, which strains wires by some per cent; passive lids, free ends, round and rectangular wires, contact along the
/// walls and at the edges alone in turn. Always the same ones; a wider search is the nightly run of <see
/// cref="RandomArchTests"/>.</summary>
internal static class LawCases
{
    /// <summary>The first arches of this kind.</summary>
    /// <param name="count">How many.</param>
    /// <param name="mostSlots">Of up to so many slots.</param>
    public static IEnumerable<Case> Take(int count, int mostSlots = 16) => Enumerable.Range(1, int.MaxValue)
        .Select(number => new RandomArch(number))
        .Where(arch => arch.Disorder is Disorder.Mild or Disorder.Moderate && arch.Arrangement.Slots.Length is > 2)
        .Where(arch => arch.Arrangement.Slots.Length <= mostSlots)
        .Take(count)
        .Select(arch => new Case(arch.Number, Plain(arch)));

    /// <summary>Engages a case; null where no equilibrium is found, which <see cref="Enough"/> counts.</summary>
    public static EngagementResult? Engage(Arrangement arrangement, EngagementOptions? options = null)
    {
        EngagementResult result = new Engager(arrangement, options).Engage();
        return result.Converged ? result : null;
    }

    /// <summary>Laws are shown on what is engaged and can be compared; this keeps the set from running empty.</summary>
    public static void Enough(int shown, int tried, double share = 0.9) =>
        Assert.True(shown >= share * tried, $"Only {shown} of {tried} arches could be compared, so little is shown.");

    /// <summary>Largest force on a tooth [N], and not less than a hundredth.</summary>
    public static double LargestForce(EngagementResult result) =>
        Math.Max(0.01, result.Slots.Max(s => s.OnTooth.Force.Length));

    /// <summary>Largest difference of forces, as a share of the largest force; moments count by a lever of 5
    /// mm.</summary>
    public static double Difference(EngagementResult a, EngagementResult b) => Difference(a, b, w => w);

    /// <summary>The same, with the loads of <paramref name="b"/> carried over to the frame of <paramref
    /// name="a"/>.</summary>
    public static double Difference(EngagementResult a, EngagementResult b, Func<Wrench, Wrench> carry)
    {
        double worst = 0;
        for (int i = 0; i < a.Slots.Length; i++)
        {
            Wrench first = a.Slots[i].OnTooth;
            Wrench second = carry(b.Slots[i].OnTooth);
            worst = Math.Max(worst, (first.Force - second.Force).Length);
            worst = Math.Max(worst, (first.Moment - second.Moment).Length / 5);
        }

        return worst / LargestForce(a);
    }

    /// <summary>The arrangement with every slot changed.</summary>
    public static Arrangement Each(this Arrangement arrangement, Func<Slot, Slot> change) =>
        arrangement with { Slots = [.. arrangement.Slots.Select(change)] };

    /// <summary>The same with the wire clamped in the first slot: it does not slide as a whole, so that a comparison
    /// does not hang on how nearly the place is found where nothing drives it along.</summary>
    public static Arrangement Held(Arrangement arrangement) =>
        arrangement with { Slots = arrangement.Slots.SetItem(0, arrangement.Slots[0] with { Hold = Hold.Clamped }) };

    private static Arrangement Plain(RandomArch arch) => Free(arch.Arrangement).Each(s => s with
    {
        Tie = Tie.Closed(),
        Hold = arch.Number % 2 == 0 ? Hold.Walls : Hold.EdgesOnly,
        Actual = FramePath.Between(s.Rest, s.Actual, arch.Disorder == Disorder.Mild ? 1 : 0.4),
    });

    private static Arrangement Free(Arrangement arrangement) => arrangement with { Ends = WireEnds.Free };

    /// <summary>One arch.</summary>
    /// <param name="Number">Of <see cref="RandomArch"/>.</param>
    /// <param name="Arrangement">With its wire.</param>
    internal sealed record Case(int Number, Arrangement Arrangement);
}
