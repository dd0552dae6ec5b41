namespace Archwright.Dentition.Tables;

/// <summary>A figure and where it comes from.</summary>
/// <param name="Value">In the unit of <paramref name="Unit"/>.</param>
/// <param name="Unit">Such as MPa or mm; "1" for a plain number.</param>
/// <param name="Spread">Range or scatter in the source, in its own words; empty when it gives none.</param>
/// <param name="Source">Authors, title, journal, year; or "common practice, no source".</param>
/// <param name="How">How the figure was had: found, from memory, computed, or common practice.</param>
public sealed record Sourced(double Value, string Unit, string Spread, string Source, string How);
