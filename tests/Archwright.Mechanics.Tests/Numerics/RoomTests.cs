using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Tests.Numerics;

[Trait("basis", "docs")]
public sealed class RoomTests
{
    [Fact]
    public void What_one_gives_back_the_next_may_have()
    {
        double[] first;
        using (var room = new Room())
        {
            first = room.Take<double>(1000);
            first[7] = 3;
        }

        using var next = new Room();
        Assert.Same(first, next.Take<double>(1000));
    }

    [Fact]
    public void Arrays_lent_at_once_are_different_ones()
    {
        using var room = new Room();
        Assert.NotSame(room.Take<double>(1000), room.Take<double>(1000));
    }

    [Fact]
    public void What_is_to_be_nil_is_nil_whatever_was_left_in_it()
    {
        using (var room = new Room())
            room.Take<int>(500).AsSpan().Fill(9);

        using var next = new Room();
        Assert.DoesNotContain(Room.TakeCleared<int>(next, 500).Take(500), one => one != 0);
    }

    [Fact]
    public void Without_a_room_an_array_is_as_long_as_asked_for()
    {
        Assert.Equal(77, Room.Take<double>(null, 77).Length);
        Assert.Equal(new double[77], Room.TakeCleared<double>(null, 77));
    }
}
