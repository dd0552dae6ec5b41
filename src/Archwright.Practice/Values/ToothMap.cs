using System.Collections;
using System.Collections.Immutable;
using Archwright.Dentition.Teeth;

namespace Archwright.Practice.Values;

/// <summary>One value a tooth, in the order of the ISO numbers; equal to another with equal values on the same
/// teeth. Immutable.</summary>
/// <typeparam name="T">Kind of value; compared by its own equality.</typeparam>
public sealed class ToothMap<T> : IReadOnlyCollection<KeyValuePair<ToothNumber, T>>, IEquatable<ToothMap<T>>
    where T : notnull
{
    private readonly ImmutableSortedDictionary<int, T> byIso;

    private ToothMap(ImmutableSortedDictionary<int, T> byIso) => this.byIso = byIso;

    /// <summary>No teeth.</summary>
    public static ToothMap<T> Empty { get; } = new(ImmutableSortedDictionary<int, T>.Empty);

    /// <inheritdoc/>
    public int Count => byIso.Count;

    /// <summary>The teeth that have a value, by ISO number.</summary>
    public IEnumerable<ToothNumber> Teeth => byIso.Keys.Select(ToothNumber.FromIso);

    /// <summary>A map of the pairs given; of two values for one tooth the later counts.</summary>
    public static ToothMap<T> Of(IEnumerable<KeyValuePair<ToothNumber, T>> pairs) =>
        new(ImmutableSortedDictionary<int, T>.Empty.SetItems(
            pairs.Select(pair => KeyValuePair.Create(pair.Key.Iso, pair.Value))));

    /// <summary>The same value on each of the teeth.</summary>
    public static ToothMap<T> Same(IEnumerable<ToothNumber> teeth, T value) =>
        Of(teeth.Select(tooth => KeyValuePair.Create(tooth, value)));

    /// <summary>True when the tooth has a value.</summary>
    public bool Has(ToothNumber tooth) => byIso.ContainsKey(tooth.Iso);

    /// <summary>The value of a tooth, or the one given when it has none.</summary>
    public T Of(ToothNumber tooth, T otherwise) => byIso.GetValueOrDefault(tooth.Iso, otherwise);

    /// <summary>This map with a value on one tooth.</summary>
    public ToothMap<T> With(ToothNumber tooth, T value) => new(byIso.SetItem(tooth.Iso, value));

    /// <summary>This map without a value on one tooth.</summary>
    public ToothMap<T> Without(ToothNumber tooth) => new(byIso.Remove(tooth.Iso));

    /// <inheritdoc/>
    public bool Equals(ToothMap<T>? other) => other is not null && byIso.SequenceEqual(other.byIso);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ToothMap<T>);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        byIso.Aggregate(byIso.Count, (hash, pair) => HashCode.Combine(hash, pair.Key, pair.Value));

    /// <inheritdoc/>
    public IEnumerator<KeyValuePair<ToothNumber, T>> GetEnumerator() =>
        byIso.Select(pair => KeyValuePair.Create(ToothNumber.FromIso(pair.Key), pair.Value)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
