using Archwright.Dentition.Teeth;
using Archwright.Practice.Stock;

namespace Archwright.Practice.Tests.Stock;

/// <summary>A shelf that counts. Rests on counting.</summary>
[Trait("basis", "law")]
public sealed class StockLotTests
{
    [Fact]
    public void Taking_a_piece_leaves_one_fewer_and_says_when_to_order()
    {
        StockLot lot = Samples.Lot(pieces: 3);
        Assert.False(lot.IsLow);

        lot.Take("niti-014", Jaw.Upper, Samples.Today);

        Assert.Equal(2, lot.OnHand);
        Assert.True(lot.IsLow);
    }

    [Fact]
    public void A_lot_serves_only_its_arch_in_its_time_and_while_it_lasts()
    {
        Assert.True(Samples.Lot().CanServe(Jaw.Upper, Samples.Today));
        Assert.False(Samples.Lot().CanServe(Jaw.Lower, Samples.Today));
        Assert.False(Samples.Lot(pieces: 0).CanServe(Jaw.Upper, Samples.Today));
        Assert.False(Samples.Lot(expires: Samples.Today.AddDays(-1)).CanServe(Jaw.Upper, Samples.Today));
    }
}
