using System.Text.Json.Nodes;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

public sealed class EquilibriumTests
{
    // Warmed up: the engaged wire finds its new equilibrium once before, so that code is compiled. The runtime counts
    // the bytes.
    [Theory, Trait("basis", "law")]
    [InlineData("arch-edges-13-high")]
    [InlineData("arch-point-13-labial")]
    public void An_iteration_allocates_nothing(string id)
    {
        var engager = new Engager(BenchmarkFile.Arch(BenchmarkFile.Case("arch", id)));
        Assert.True(engager.Engage().Converged);
        MoveAndSettle(engager, 0.02);
        int before = engager.Rod.Iterations;

        long bytes = GC.GetAllocatedBytesForCurrentThread();
        SearchEnd end = MoveAndSettle(engager, -0.02);
        bytes = GC.GetAllocatedBytesForCurrentThread() - bytes;

        Assert.Equal(SearchEnd.Converged, end);
        Assert.True(engager.Rod.Iterations > before + 1, "Nothing was iterated, so nothing is shown.");
        Assert.Equal(0, bytes);
    }

    [Fact, Trait("basis", "law")]
    public void A_search_that_is_called_off_stops()
    {
        JsonObject inputs = BenchmarkFile.Case("three_slots", "three-slots-016-in-022")["inputs"]!.AsObject();
        using var source = new CancellationTokenSource();
        source.Cancel();
        var engager = new Engager(BenchmarkFile.ThreeSlots(inputs, 1, Hold.Walls));

        Assert.Throws<OperationCanceledException>(() => engager.Engage(source.Token));
    }

    private static SearchEnd MoveAndSettle(Engager engager, double by)
    {
        Equilibrium rod = engager.Rod;
        rod.Frames[4] = rod.Frames[4].Moved(rod.Frames[4].Outward * by, default);
        return rod.SearchNear(60, loose: true, TestContext.Current.CancellationToken);
    }
}
