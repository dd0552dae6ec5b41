using Archwright.Dentition.Teeth;
using Archwright.Practice.Values;
using CsCheck;

namespace Archwright.Practice.Tests.Values;

/// <summary>Lists and maps that are equal when their entries are. Rests on what equality means.</summary>
[Trait("basis", "law")]
public sealed class ToothMapTests
{
    private static readonly Gen<(int Iso, int Value)[]> Pairs =
        Gen.Select(Gen.Int[11, 17], Gen.Int[0, 3]).Array[0, 10];

    [Fact]
    public void The_order_of_writing_does_not_matter() => Pairs.Sample(pairs =>
    {
        var unique = pairs.DistinctBy(pair => pair.Iso).ToArray();
        ToothMap<int> forward = Map(unique);
        ToothMap<int> backward = Map(unique.Reverse());

        Assert.Equal(forward, backward);
        Assert.Equal(forward.GetHashCode(), backward.GetHashCode());
    });

    [Fact]
    public void Another_value_or_tooth_makes_another_map()
    {
        ToothMap<int> map = Map([(11, 1), (12, 2)]);

        Assert.NotEqual(map, map.With(ToothNumber.FromIso(12), 3));
        Assert.NotEqual(map, map.Without(ToothNumber.FromIso(12)));
        Assert.Equal(map, map.With(ToothNumber.FromIso(12), 3).With(ToothNumber.FromIso(12), 2));
    }

    [Fact]
    public void Lists_are_equal_by_their_entries_in_order()
    {
        Assert.Equal(Listing<int>.Of([1, 2]), Listing<int>.Empty.With(1).With(2));
        Assert.NotEqual(Listing<int>.Of([1, 2]), Listing<int>.Of([2, 1]));
        Assert.Equal(Listing<int>.Of([1, 2]).GetHashCode(), Listing<int>.Of([1, 2]).GetHashCode());
    }

    [Fact]
    public void An_offset_goes_to_the_computation_and_back()
    {
        var offset = new ToothOffset(0.5, -1.25, 0.25, 12, -3, 4);
        ToothOffset back = ToothOffset.From(offset.ToClinical());

        Assert.Equal(offset.RotationDegrees, back.RotationDegrees, 12);
        Assert.Equal(offset.TorqueDegrees, back.TorqueDegrees, 12);
        Assert.Equal(offset.OcclusalMm, back.OcclusalMm);
    }

    private static ToothMap<int> Map(IEnumerable<(int Iso, int Value)> pairs) => ToothMap<int>.Of(
        pairs.Select(pair => KeyValuePair.Create(ToothNumber.FromIso(pair.Iso), pair.Value)));
}
