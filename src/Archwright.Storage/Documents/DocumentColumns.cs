using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Archwright.Storage.Documents;

/// <summary>Columns that hold a part of the record as JSON text: byte for byte as it was saved, on every database.
/// </summary>
internal static class DocumentColumns
{
    /// <summary>Keeps a property as a document.</summary>
    public static PropertyBuilder<T> IsDocument<T>(this PropertyBuilder<T> property)
        where T : class => property.HasConversion(
            value => DocumentJson.Write(value),
            json => DocumentJson.Read<T>(json),
            new ValueComparer<T>(
                (one, other) => Equals(one, other),
                value => value.GetHashCode(),
                value => value));

    /// <summary>Keeps a property that may be absent as a document.</summary>
    public static PropertyBuilder<T?> IsOptionalDocument<T>(this PropertyBuilder<T?> property)
        where T : class => property.HasConversion(
            value => value == null ? null : DocumentJson.Write(value),
            json => json == null ? null : DocumentJson.Read<T>(json),
            new ValueComparer<T?>(
                (one, other) => Equals(one, other),
                value => value == null ? 0 : value.GetHashCode(),
                value => value));
}
