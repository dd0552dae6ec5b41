using Archwright.Dentition.Teeth;
using Archwright.Practice.Ladders;
using Archwright.Practice.Stock;
using Archwright.Practice.Tests.Ladders;
using Archwright.Practice.Values;

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
            [],
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
            [], [Upper(7), Upper(14), Upper(21)], Past, [lot], Samples.Today, deliveryDays: 7)
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

    [Fact]
    public void A_piece_that_a_ladder_names_is_a_whole_one_on_its_day_and_adds_to_what_was_fitted_before()
    {
        StockLot lot = StockLot.Receive("niti-016", null, "", "L", null, 1, 0);

        var demand = WireDemand.Of(
            [Needs(28, "niti-016"), Needs(14, "niti-016"), Needs(0, "ss-018")], [Upper(21)], Past, [lot],
            Samples.Today, deliveryDays: 7);
        DemandLine line = demand.Lines.Single(one => one.WireId == "niti-016");

        Assert.Equal((2.5, 2), (line.Expected, line.ByLadders)); // and half a piece after niti-014
        // The one on the shelf goes in two weeks, and half a piece more a week later counts as a whole.
        Assert.Equal((2, Samples.Today.AddDays(21 - 7)), (line.ToOrder, line.OrderBy));
        Assert.Equal(("ss-018", Samples.Today), (demand.Lines[0].WireId, demand.Lines[0].OrderBy)); // none is left
        Assert.Equal((1, 0), (demand.Arches, demand.Unknown));
    }

    [Fact]
    public void A_ladder_needs_its_wires_from_the_day_of_its_positions_on_and_none_before_the_next_visit()
    {
        KeptLadder ladder = KeptSamples.Ladder(new LadderBasis(Samples.Today.AddDays(-28), Samples.Inputs(), true));
        KeptSequence way = ladder.Sequences[0];
        KeptLadder longer = ladder with
        {
            Sequences = Listing<KeptSequence>.Of(
            [
                way with
                {
                    Wires = Listing<KeptWire>.Of(
                    [
                        way.Wires[0], Wire("niti-018", 4), Wire("niti-016x022", 8), Wire("ss-019x025", null),
                    ]),
                },
            ]),
        };

        PlannedNeed[] needs = [.. PlannedNeed.Of(Jaw.Upper, longer, Samples.Today.AddDays(14), Samples.Today)];

        // The wire in place is in, the fourth week is today, nobody comes before two weeks, the last is not in sight.
        Assert.Equal([Needs(14, "niti-018"), Needs(28, "niti-016x022")], needs);
        Assert.Equal(
            Samples.Today, PlannedNeed.Of(Jaw.Upper, longer, null, Samples.Today).First().Day); // nothing is booked
        Assert.True(PlannedNeed.HasPlan(longer));
        Assert.False(PlannedNeed.HasPlan(null));
        Assert.False(PlannedNeed.HasPlan(ladder with { Sequences = Listing<KeptSequence>.Empty }));
        Assert.True(PlannedNeed.HasPlan(
            ladder with { Sequences = Listing<KeptSequence>.Empty, IsAtWorkingWire = true }));

        KeptWire Wire(string id, double? week) => way.Wires[1] with
        {
            WireId = id, FromWeek = new LadderSpread(0, week, null),
        };
    }

    private static PlannedNeed Needs(int days, string wire) => new(Samples.Today.AddDays(days), Jaw.Upper, wire);

    private static DemandLine Line(StockLot[] lots) => WireDemand.Of(
        [], [Upper(7), Upper(14), Upper(21)], Past, lots, Samples.Today, deliveryDays: 7)
        .Lines.Single(one => one.WireId == "niti-016");

    private static ComingArch Upper(int days) => new(Samples.Today.AddDays(days), Jaw.Upper, "niti-014");
}
