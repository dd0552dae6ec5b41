using System.Buffers;

namespace Archwright.Mechanics.Numerics;

/// <summary>Arrays borrowed from the process for the life of one workspace, and given back with it.</summary>
/// <remarks>A workspace is megabytes, most of it never written; allocated anew for each of a hundred wires, a third of
/// a cold solve went into the collector and into pages of memory touched for the first time. For one
/// thread.</remarks>
internal sealed class Room : IDisposable
{
    private readonly List<Action> _back = [];

    /// <summary>Borrows an array; what it holds is left over from others.</summary>
    /// <param name="least">Its length at least.</param>
    public T[] Take<T>(int least)
        where T : struct
    {
        T[] array = ArrayPool<T>.Shared.Rent(least);
        _back.Add(() => ArrayPool<T>.Shared.Return(array));
        return array;
    }

    /// <summary>From a room, or from the heap where there is none; nothing is cleared.</summary>
    /// <param name="room">Null for an array that nobody gives back.</param>
    /// <param name="least">Its length at least.</param>
    public static T[] Take<T>(Room? room, int least)
        where T : struct =>
        room is null ? GC.AllocateUninitializedArray<T>(least) : room.Take<T>(least);

    /// <summary>The same, with nothing but nil in it as far as that length.</summary>
    /// <param name="room">Null for an array that nobody gives back.</param>
    /// <param name="least">Its length at least.</param>
    public static T[] TakeCleared<T>(Room? room, int least)
        where T : struct
    {
        if (room is null)
            return new T[least];

        T[] array = room.Take<T>(least);
        array.AsSpan(0, least).Clear();
        return array;
    }

    /// <summary>Gives everything back.</summary>
    public void Dispose()
    {
        foreach (Action one in _back)
            one();
        _back.Clear();
    }
}
