using Archwright.Dentition.Teeth;
using Archwright.Practice.Stock;

namespace Archwright.Practice.Tests.Stock;

/// <summary>What the next weeks need. Rests on counting by hand.</summary>
[Trait("basis", "law")]
public sealed class WireDemandTests
{
    // Of four arches with niti-014, two were given niti-016, one ss-016, one kept it.
    private static readonly PastChange[] Past =
    [
        new(Jaw.Upper, "niti-014", "niti-016"), new(Jaw.Upper, "niti-014", "niti-016"),
        new(Jaw.Upper, "niti-014", "ss-016"), new(Jaw.Upper, "niti-014", ""),
        new(Jaw.Lower, "niti-014", "ss-018"), // the other arch does not count
    ];

    [Fact]
    public void Shares_are_summed_and_who_says_too_little_is_counted()
    {
        WireDemand demand = WireDemand.Of(
            [
                Upper(7), Upper(14), Upper(21), new(Samples.Today, Jaw.Lower, "niti-014"),
                new(Samples.Today, Jaw.Upper, ""),
            ],
            Past, [], Samples.Today, deliveryDays: 7);

        Assert.Equal((5, 2), (demand.Arches, demand.Unknown));
        Assert.Equal(
            [("niti-016", 1.5, 2), ("ss-016", 0.75, 1)],
            demand.Lines.Select(line => (line.WireId, line.Expected, line.ToOrder)).Order());
    }

    [Fact]
    public void It_is_to_be_ordered_before_the_shelf_falls_below_its_reserve()
    {
        // Two on the shelf, a reserve of one: half a piece a week; the third week brings it below.
        StockLot lot = StockLot.Receive("niti-016", null, "", "L", null, 2, 1);

        DemandLine line = WireDemand.Of(
            [Upper(7), Upper(14), Upper(21)], Past, [lot], Samples.Today, deliveryDays: 7)
            .Lines.Single(one => one.WireId == "niti-016");

        Assert.Equal((2, 1), (line.OnHand, line.ToOrder)); // 1.5 up, and one in reserve, less two
        Assert.Equal(Samples.Today.AddDays(14), line.OrderBy);
    }

    [Fact]
    public void What_expires_or_is_recalled_does_not_count_and_enough_is_enough()
    {
        StockLot recalled = StockLot.Receive("niti-016", null, "", "R", null, 9, 0);
        recalled.Recall("Letter.", Samples.Today);
        StockLot expiring = StockLot.Receive("niti-016", null, "", "E", Samples.Today.AddDays(10), 9, 0);
        StockLot plenty = StockLot.Receive("niti-016", null, "", "P", null, 9, 1);

        DemandLine lacking = Line([recalled]);
        DemandLine held = Line([expiring, plenty]);

        Assert.Equal((0, 2), (lacking.OnHand, lacking.ToOrder));
        Assert.Equal((18, 0, (DateOnly?)null), (held.OnHand, held.ToOrder, held.OrderBy));
    }

    private static DemandLine Line(StockLot[] lots) => WireDemand.Of(
        [Upper(7), Upper(14), Upper(21)], Past, lots, Samples.Today, deliveryDays: 7)
        .Lines.Single(one => one.WireId == "niti-016");

    private static ComingArch Upper(int days) => new(Samples.Today.AddDays(days), Jaw.Upper, "niti-014");
}
