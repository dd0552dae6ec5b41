using System.Collections.Immutable;
using System.Globalization;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Forecasts;

/// <summary>Lips and cheeks that resist: what they press with more, or less, than where the teeth stood in
/// balance.</summary>
/// <param name="Factor">How many times that of average people, 0 to <see cref="MostFactor"/>.</param>
public sealed record SoftTissue(double Factor)
{
    /// <summary>Largest factor: sensors in print differ as much.</summary>
    public const double MostFactor = 20;

    /// <summary>None at all.</summary>
    public static SoftTissue None { get; } = new(0);

    /// <summary>That of average people.</summary>
    public static SoftTissue Average { get; } = new(1);

    /// <summary>Reads a factor.</summary>
    /// <param name="text">A number with a decimal point.</param>
    /// <param name="factor">0 to <see cref="MostFactor"/>.</param>
    /// <returns>False where it is no number, or lies outside.</returns>
    public static bool TryReadFactor(string text, out double factor) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out factor)
        && factor is >= 0 and <= MostFactor;

    /// <summary>Where the slots stood when lip and tongue were in balance, in order; empty: where they stand now.
    /// </summary>
    public ImmutableArray<SlotFrame> Balanced { get; init; } = [];

    /// <summary>The same, in balance where the slots of an arch stand, unless that was said before.</summary>
    internal SoftTissue BalancedOn(Arrangement arrangement) => Balanced.IsDefaultOrEmpty
        ? this with { Balanced = [.. arrangement.Slots.Select(slot => slot.Actual)] } : this;
}
