using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Archwright.Dentition.Catalogue;

namespace Archwright.Treatment.Forecasts;

/// <summary>How wires rub in their slots, where that is not left to what each slot says: a coefficient, or that of each
/// wire's alloy on steel.</summary>
public sealed record FrictionChoice
{
    /// <summary>Largest coefficient.</summary>
    public const double Most = 2;

    private const string NoneWord = "none";
    private readonly double? _coefficient;

    private FrictionChoice(string word, double? coefficient)
    {
        Word = word;
        _coefficient = coefficient;
    }

    /// <summary>In saliva: the catalogue's coefficient of each alloy.</summary>
    public static FrictionChoice Wet { get; } = new("wet", null);

    /// <summary>Dry.</summary>
    public static FrictionChoice Dry { get; } = new("dry", null);

    /// <summary>The wire slides freely.</summary>
    public static FrictionChoice None { get; } = new(NoneWord, 0);

    /// <summary>How it is written: none, wet, dry, or the coefficient.</summary>
    public string Word { get; }

    /// <summary>The coefficient, whatever the wire; null for one that depends on the alloy.</summary>
    public double? Coefficient => _coefficient;

    /// <summary>One coefficient for every wire.</summary>
    /// <param name="coefficient">0 to <see cref="Most"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">It lies outside.</exception>
    public static FrictionChoice Of(double coefficient) => coefficient is >= 0 and <= Most
        ? coefficient == 0 ? None : new(coefficient.ToString(CultureInfo.InvariantCulture), coefficient)
        : throw new ArgumentOutOfRangeException(nameof(coefficient), coefficient, $"It lies from 0 to {Most:0}.");

    /// <summary>Reads none, wet, dry or a coefficient.</summary>
    public static bool TryRead(string text, [NotNullWhen(true)] out FrictionChoice? choice)
    {
        choice = text switch
        {
            NoneWord => None,
            "wet" => Wet,
            "dry" => Dry,
            _ => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                && value is >= 0 and <= Most ? Of(value) : null,
        };
        return choice is not null;
    }

    /// <summary>The coefficient of a wire of this alloy.</summary>
    public double On(CatalogueAlloy alloy)
    {
        ArgumentNullException.ThrowIfNull(alloy);
        return _coefficient ?? (this == Wet ? alloy.FrictionWet.Value : alloy.FrictionDry.Value);
    }
}
