using System.Collections;
using System.Collections.Immutable;

namespace Archwright.Practice.Values;

/// <summary>An immutable list that is equal to another with equal entries in the same order.</summary>
/// <typeparam name="T">Kind of entry; compared by its own equality.</typeparam>
public sealed class Listing<T> : IReadOnlyList<T>, IEquatable<Listing<T>>
    where T : notnull
{
    private readonly ImmutableArray<T> entries;

    private Listing(ImmutableArray<T> entries) => this.entries = entries;

    /// <summary>No entries.</summary>
    public static Listing<T> Empty { get; } = new([]);

    /// <inheritdoc/>
    public int Count => entries.Length;

    /// <inheritdoc/>
    public T this[int index] => entries[index];

    /// <summary>A list of the entries given, in their order.</summary>
    public static Listing<T> Of(IEnumerable<T> entries) => new([.. entries]);

    /// <summary>This list and one entry more at its end.</summary>
    public Listing<T> With(T entry) => new(entries.Add(entry));

    /// <summary>This list without the first entry equal to the one given.</summary>
    public Listing<T> Without(T entry) => new(entries.Remove(entry));

    /// <inheritdoc/>
    public bool Equals(Listing<T>? other) => other is not null && entries.SequenceEqual(other.entries);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Listing<T>);

    /// <inheritdoc/>
    public override int GetHashCode() => entries.Aggregate(entries.Length, HashCode.Combine);

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)entries).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
