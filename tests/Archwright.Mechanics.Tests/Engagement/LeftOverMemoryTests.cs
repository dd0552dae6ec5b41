using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Workspaces lie in memory that others used before: what they left behind must not matter.</summary>
[Trait("basis", "law")]
public sealed class LeftOverMemoryTests
{
    private const int Copies = 20;
    private const int LargestArray = 1 << 22; // [bytes]

    /// <summary>Elastic wires, wires that transform and wires that yield, engaged and relieved in memory full of bytes
    /// that make no numbers, and of bytes that make small ones: the same to the last digit.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(13)]
    public void A_wire_does_not_feel_what_others_left_in_its_memory(int number)
    {
        Leave(0xFF);
        (EngagementResult engaged, EngagementResult relieved, double[] stiffness) = Solved(number);
        Leave(0x3F);
        (EngagementResult again, EngagementResult relievedAgain, double[] stiffnessAgain) = Solved(number);

        Assert.Equal(engaged.Converged, again.Converged);
        Assert.Equal(engaged.Iterations, again.Iterations);
        Assert.Equal(Loads(engaged), Loads(again));
        Assert.Equal(Loads(relieved), Loads(relievedAgain));
        Assert.Equal(stiffness, stiffnessAgain);
        Assert.DoesNotContain(Loads(again), load => double.IsNaN(load.Force.Length));
    }

    [Fact, Trait("basis", "docs")]
    public void A_wire_whose_memory_was_given_back_is_not_to_be_used()
    {
        var engager = new Engager(new RandomArch(1).Arrangement);
        engager.Engage();
        engager.Dispose();
        engager.Dispose();

        Assert.Throws<ObjectDisposedException>(() => engager.Engage());
        Assert.Throws<ObjectDisposedException>(() => engager.Apply(Engager.Relieving(engager.Arrangement, 0.1)));
        Assert.Throws<ObjectDisposedException>(() => engager.TangentStiffness());
    }

    private static (EngagementResult Engaged, EngagementResult Relieved, double[] Stiffness) Solved(int number)
    {
        Arrangement arrangement = RandomAlloy.Into(new RandomArch(number).Arrangement, number);
        using var engager = new Engager(arrangement);
        EngagementResult engaged = engager.Engage();
        EngagementResult relieved = engager.Apply(Engager.Relieving(arrangement, 0.1));
        var stiffness = new double[36 * arrangement.Slots.Length * arrangement.Slots.Length];
        engager.TryTouchedStiffness(stiffness);
        return (engaged, relieved, stiffness);
    }

    private static Wrench[] Loads(EngagementResult result) => [.. result.Slots.Select(slot => slot.OnTooth)];

    private static void Leave(byte what)
    {
        Leave<double>(what);
        Leave<Vector3>(what);
        Leave<RestPoint>(what);
        Leave<ElementVector>(what);
        Leave<Station>(what);
        Leave<ContactRow>(what);
        Leave<InteriorSide>(what);
        Leave<int>(what);
    }

    // Every array that the process would lend next.
    private static void Leave<T>(byte what)
        where T : unmanaged
    {
        for (int power = 4; (1L << power) * Unsafe.SizeOf<T>() <= LargestArray; power++)
        {
            var lent = new List<T[]>();
            int copies = (1 << power) * Unsafe.SizeOf<T>() > LargestArray / 8 ? Copies / 4 : Copies;
            for (int copy = 0; copy < copies; copy++)
                lent.Add(ArrayPool<T>.Shared.Rent(1 << power));
            foreach (T[] one in lent)
            {
                MemoryMarshal.AsBytes(one.AsSpan()).Fill(what);
                ArrayPool<T>.Shared.Return(one);
            }
        }
    }
}
