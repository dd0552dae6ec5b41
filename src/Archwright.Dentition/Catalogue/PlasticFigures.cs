using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Catalogue;

/// <summary>How an alloy yields, for a law of one straight line up to the yield point and one beyond.</summary>
/// <param name="Yield">Stress at which it begins to stay bent in a bending test [MPa]. Mostly the 0.1 % offset
/// strength in tension (<see cref="CatalogueAlloy.Yield"/>); where tension and springback in bending disagree, the
/// figure that gives the springback.</param>
/// <param name="Hardening">Rise of stress with plastic strain beyond the yield point, H; with the whole strain it rises
/// by E H/(E + H) [MPa].</param>
public sealed record PlasticFigures(Sourced Yield, Sourced Hardening);
