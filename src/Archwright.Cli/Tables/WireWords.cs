using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Sections;

namespace Archwright.Cli.Tables;

/// <summary>A wire of a bench test in words.</summary>
internal static class WireWords
{
    /// <summary>Its name in the catalogue, or its outline.</summary>
    public static string Title(string? id, Section section) =>
        id is not null && WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? $"{wire.Id}, {wire.Title}"
        : section.IsRound ? $"Round wire {Length(section.Thickness)} mm"
        : $"Wire {Length(section.Thickness)} × {Length(section.Width)} mm";

    private static string Length(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
